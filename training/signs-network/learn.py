"""Fits heads on what `see.py` wrote, everything that is compared, and writes the network to ship.

    python3 learn.py --seen FOLDER --data FOLDER --to OUT

FOLDER of `see.py`: `clean.npz`, `anew.npz`, `painted*.npz`, `rendered.npz`. OUT gets `answers.json` (what each head says of the photographs
kept from it, for `evaluate.ts`), `signs.onnx` and `check.json` (an input and what PyTorch makes of it, for the tests).
"""
import argparse, json, os, time
import numpy as np, torch, torch.nn as nn, torch.nn.functional as F
from encoder import FEATURES, SIDE, STAGES, Encoder, bell
from labels import MARKS, labels_of

FOLDS, KINDS = 5, 48
SETS = ["blackgram-india", "chilli-india", "bean-uganda"]
SMALL, LARGE = 48, 192
NO_STRANGENESS = torch.zeros(FEATURES, 1), torch.zeros(FEATURES, KINDS), torch.zeros(KINDS, 1)


def hash_of(text):
    """FNV-1a: the same fold on every machine."""
    value = 2166136261
    for c in text.encode(): value = ((value ^ c) * 16777619) & 0xFFFFFFFF
    return value


class Head(nn.Module):
    def __init__(self, size):
        super().__init__()
        self.features, self.marks = nn.Linear(FEATURES, size), nn.Linear(size, len(MARKS))

    def forward(self, z):
        h = F.relu(self.features(F.dropout(z, 0.15, self.training)))
        return self.marks(F.dropout(h, 0.3, self.training)), h


class Seen:
    """What was seen of one stream of pictures: features, labels, and which photograph each is of."""

    def __init__(self, path, rows, everywhere=False):
        file = np.load(path)
        self.x = torch.from_numpy(file["everywhere" if everywhere else "seen"][:, 0].astype(np.float32))
        self.labels = torch.from_numpy(file["labels"].astype(np.float32))
        self.rows = [rows.get(i, {"set": "rendered", "label": "", "fold": -1}) for i in file["ids"]]


def is_kept_back(row, fold):
    if fold.startswith("without-"): return row["set"] == fold.removeprefix("without-")
    return fold == "none" and row["set"] != "rendered" or fold.isdigit() and row["fold"] == int(fold)


def fit(streams, fold, size, seed=1, epochs=14):
    """A head on all that is not kept back, every set and label met alike."""
    torch.manual_seed(hash_of(f"{seed} {fold} {size}"))
    use = [(s, [i for i, row in enumerate(s.rows) if not is_kept_back(row, fold)]) for s in streams]
    x = torch.cat([s.x[i] for s, i in use])
    labels = torch.cat([s.labels[i] for s, i in use])
    keys = [f"{s.rows[k]['set']}/{s.rows[k]['label']}" for s, i in use for k in i]
    count = {key: keys.count(key) for key in set(keys)}
    # Rendered leaves count as three labels.
    weights = torch.tensor([count[k] ** -0.6 if k != "rendered/" else 3 * count[k] ** -1 * (len(keys) / len(count)) ** 0.4 for k in keys])
    mean, spread = x.mean(0), x.std(0).clamp(min=1e-3)
    x = ((x - mean) / spread).clamp(-8, 8)
    w = (weights / weights.sum())[:, None]
    there, missing = ((labels == 1) * w).sum(0), ((labels == 0) * w).sum(0)
    lift = (missing / there.clamp(min=1e-6)).clamp(1 / 36, 36).sqrt()
    head = Head(size)
    opt = torch.optim.AdamW(head.parameters(), 2e-3, weight_decay=0.05)
    steps = epochs * len(x) // 256
    for step in range(steps):
        for g in opt.param_groups: g["lr"] = 2e-3 * (0.5 + 0.5 * np.cos(np.pi * step / steps)) + 1e-6
        at = torch.multinomial(weights, 256, replacement=True)
        z, said = head(x[at] + 0.1 * torch.randn(256, x.shape[1]))[0], labels[at]
        loss = F.binary_cross_entropy_with_logits(z, said.clamp(min=0) * 0.96 + 0.02, reduction="none")
        known = (said >= 0) * torch.where(said == 1, lift, 1 / lift)
        loss = (loss * known).sum() / known.sum()
        opt.zero_grad(); loss.backward(); opt.step()
    return head.eval(), mean, spread, x


def strangeness_of(x):
    """Weights u, P, v so that (z * z) u + (z P)^2 v is about 1 on what was taught: half from the main directions, half from what they leave
    (Lee et al. 2018 measure by Mahalanobis distance; here with a low rank and a remainder)."""
    x = x[torch.randperm(len(x))[:6000]]
    values, vectors = torch.linalg.eigh(x.T @ x / len(x))
    top, values = vectors[:, -KINDS:], values[-KINDS:].clamp(min=1e-3)
    rest = ((x * x).sum(1) - ((x @ top) ** 2).sum(1)).mean()
    return torch.full((FEATURES, 1), float(0.5 / rest)), top / values.sqrt(), (0.5 / KINDS - values * 0.5 / rest)[:, None]


@torch.no_grad()
def answer(fitted, views):
    """Logits as the mean of the views, and strangeness of the first."""
    head, mean, spread, (u, p, v) = fitted
    z = (views - mean) / spread
    logits = torch.stack([head(z[:, k].clamp(-8, 8))[0] for k in range(z.shape[1])], 1)
    first = z[:, 0].clamp(-8, 8)
    return logits, (first * first) @ u + ((first @ p) ** 2) @ v


def export(fitted, encoder, path):
    """The encoder and the head as one ONNX graph (opset 12: reductions carry their axes)."""
    import onnx
    from onnx import TensorProto, helper, numpy_helper
    head, mean, spread, (u, p, v) = fitted
    nodes, tensors = [], []

    def keep(name, value):
        tensors.append(numpy_helper.from_array(np.ascontiguousarray(np.asarray(value, np.float32)), name))
        return name

    def do(op, inputs, name, **attributes):
        nodes.append(helper.make_node(op, inputs, [name], **attributes))
        return name

    def conv(x, name, channels, stride=1, deep=False):
        w, b = encoder.layers[name]
        groups = channels if deep else 1
        size = round((w.shape[1] // (channels // groups)) ** 0.5)
        keep(f"{name}.w", w.view(w.shape[0], channels // groups, size, size).numpy()); keep(f"{name}.b", b.numpy())
        return do("Conv", [x, f"{name}.w", f"{name}.b"], f"{name}.conv", strides=[stride] * 2, pads=[size // 2] * 4, group=groups, kernel_shape=[size] * 2)

    def pool(x, leaf, name):
        whole = do("Max", [do("ReduceSum", [leaf], f"{name}.area0", axes=[2, 3], keepdims=0), keep(f"{name}.least", [[1e-3]])], f"{name}.area")
        on = do("Mul", [x, leaf], f"{name}.on")
        average = do("Div", [do("ReduceSum", [on], f"{name}.sum", axes=[2, 3], keepdims=0), whole], f"{name}.mean")
        squares = do("Div", [do("ReduceSum", [do("Mul", [on, x], f"{name}.squares")], f"{name}.sumsq", axes=[2, 3], keepdims=0), whole], f"{name}.meansq")
        variance = do("Max", [do("Sub", [squares, do("Mul", [average, average], f"{name}.mean2")], f"{name}.var0"), keep(f"{name}.zero", [[0.0]])], f"{name}.var")
        spreads = do("Sqrt", [do("Add", [variance, keep(f"{name}.tiny", [[1e-6]])], f"{name}.var1")], f"{name}.spread")
        return [average, spreads, do("ReduceMax", [on], f"{name}.max", axes=[2, 3], keepdims=0)]

    # The mask is cut off by a 1 x 1 convolution, and so are the five channels of the encoder put together.
    keep("of.leaf", np.eye(4)[3].reshape(1, 4, 1, 1)); keep("none.1", [0.0])
    leaf = do("Conv", ["crop", "of.leaf", "none.1"], "leaf", kernel_shape=[1, 1])
    keep("of.colour", np.eye(4)[:3].reshape(3, 4, 1, 1)); keep("up", [2.0, 2.0, 2.0])
    raised = do("Conv", ["crop", "of.colour", "up"], "raised", kernel_shape=[1, 1])
    keep("of.five", np.concatenate([np.eye(4)[:3], np.zeros((2, 4))]).reshape(5, 4, 1, 1)); keep("none.5", np.zeros(5))
    across = bell()[0, 0, SIDE // 2] / bell()[0, 0, SIDE // 2, SIDE // 2] ** 0.5
    finger = do("Mul", [keep("tap.rows", across.numpy().reshape(1, 1, SIDE, 1)), keep("tap.columns", across.numpy().reshape(1, 1, 1, SIDE))], "tap")
    x = do("Add", [do("Conv", ["crop", "of.five", "none.5"], "five0", kernel_shape=[1, 1]), do("Mul", [finger, keep("tap.channel", np.eye(5)[3].reshape(1, 5, 1, 1))], "tap.five")], "five")
    parts, channels = pool(raised, leaf, "colour"), 5
    for name, blocks, n in STAGES:
        out = encoder.layers[name if name == "stem" else f"{name}.point"][1].shape[0]
        if name == "stem": x = do("Relu", [conv(x, "stem", channels, 2)], "stem.relu")
        else:
            deep = do("Relu", [conv(x, f"{name}.deep", channels, 2, True)], f"{name}.deep.relu")
            x = do("Relu", [conv(deep, f"{name}.point", channels)], f"{name}.relu")
        channels = out
        for k in range(n):
            deep = do("Relu", [conv(x, f"{blocks}.{k}.deep", channels, 1, True)], f"{blocks}.{k}.relu")
            x = do("Relu", [do("Add", [x, conv(deep, f"{blocks}.{k}.point", channels)], f"{blocks}.{k}.add")], f"{blocks}.{k}")
        leaf = do("AveragePool", [leaf], f"{blocks}.leaf", kernel_shape=[2, 2], strides=[2, 2])
        parts += pool(x, leaf, blocks)
    seen = do("Concat", parts, "seen", axis=1)
    z0 = do("Mul", [do("Sub", [seen, keep("mean", mean.numpy()[None])], "seen0"), keep("scale", 1 / spread.numpy()[None])], "z0")
    z = do("Sub", [keep("most", [[8.0]]), do("Max", [do("Sub", [keep("eight", [[8.0]]), do("Max", [z0, keep("least", [[-8.0]])], "z1")], "z2"), keep("nil", [[0.0]])], "z3")], "z")
    gemm = lambda x, w, b, name: do("Gemm", [x, keep(f"{name}.w", w), keep(f"{name}.b", b)], name)
    features = do("Relu", [gemm(z, head.features.weight.detach().numpy().T, head.features.bias.detach().numpy(), "features0")], "features")
    gemm(features, head.marks.weight.detach().numpy().T, head.marks.bias.detach().numpy(), "logits")
    kinds = gemm(z, p.numpy(), np.zeros(KINDS), "kinds")
    rest = gemm(do("Mul", [z, z], "zz"), u.numpy(), np.zeros(1), "rest")
    do("Add", [rest, gemm(do("Mul", [kinds, kinds], "kk"), v.numpy(), np.zeros(1), "main")], "strangeness")
    info = lambda name, shape: helper.make_tensor_value_info(name, TensorProto.FLOAT, shape)
    graph = helper.make_graph(nodes, "signs", [info("crop", [1, 4, SIDE, SIDE])], [info("logits", [1, len(MARKS)]), info("features", [1, head.features.out_features]), info("strangeness", [1, 1])], tensors)
    model = helper.make_model(graph, opset_imports=[helper.make_opsetid("", 12)], producer_name="bedside")
    model.ir_version = 7
    onnx.checker.check_model(model)
    onnx.save(model, path)


def made_up(k):
    """An input that any language can make: waves in the colours, a wavy leaf."""
    c, y, x = np.meshgrid(np.arange(4), np.arange(SIDE), np.arange(SIDE), indexing="ij")
    wave = np.sin(0.045 * (c + 1) * x + 0.06 * (k + 1) * y + c)
    return torch.tensor(np.where(c < 3, 0.6 * wave - 0.2, wave > -0.3).astype(np.float32))[None]


def main():
    a = argparse.ArgumentParser()
    a.add_argument("--seen", required=True); a.add_argument("--data", required=True); a.add_argument("--to", required=True)
    a.add_argument("--weights", default="../../src/leaf/outline-network.ts")
    args = a.parse_args()
    torch.set_num_threads(1)
    rows = {}
    for line in open(f"{args.data}/photos.jsonl"):
        row = json.loads(line)
        row["labels"], row["fold"] = labels_of(row), hash_of(f"{row['set']}/{row['group'] or row['file']}") % FOLDS
        rows[row["id"]] = row
    clean = np.load(f"{args.seen}/clean.npz")
    views = {False: torch.from_numpy(clean["seen"].astype(np.float32)), True: torch.from_numpy(clean["everywhere"].astype(np.float32))}
    of_clean = [rows[i] for i in clean["ids"]]
    stream = lambda *names, everywhere=False: [Seen(f"{args.seen}/{n}.npz", rows, everywhere) for n in names]
    names = sorted(name.removesuffix(".npz") for name in os.listdir(args.seen) if name.startswith("painted"))
    painted, anew, rendered = stream(*names), stream("anew"), stream("rendered")
    taught = {"real": anew, "painted": painted + anew, "rendered": rendered, "both": anew + rendered, "all": painted + anew + rendered}
    runs, start = [], time.time()

    def run(name, size, fold, streams=None, everywhere=False):
        head, mean, spread, x = fit(streams or taught[name], fold, size)
        fitted = head, mean, spread, strangeness_of(x) if (name, size) == ("all", SMALL) else NO_STRANGENESS
        logits, strange = answer(fitted, views[everywhere])
        kept = [k for k, row in enumerate(of_clean) if fold == "all" or row["set"] == "other" or is_kept_back(row, fold)]
        runs.append(dict(taught=name, size=size, sees="everything" if everywhere else "leaf", fold=fold, ids=[str(clean["ids"][k]) for k in kept],
                         logits=[[round(v, 3) for v in logits[k].mean(0).tolist()] for k in kept], first=[[round(v, 3) for v in logits[k, 0].tolist()] for k in kept],
                         strangeness=[round(float(strange[k]), 4) for k in kept]))
        print(f"{time.time() - start:.0f} s {name} {size} {'everything' if everywhere else 'leaf'} {fold}", flush=True)
        return fitted

    left_out = [f"without-{s}" for s in SETS]
    for fold in left_out + [str(k) for k in range(FOLDS)]: run("all", SMALL, fold)
    final = run("all", SMALL, "all")
    for name in ("painted", "both", "real"):
        for fold in left_out + [str(k) for k in range(FOLDS)]: run(name, SMALL, fold)
    run("rendered", SMALL, "none")
    for fold in left_out + [str(k) for k in range(FOLDS)]: run("all", LARGE, fold)
    with_ground = stream(*names, everywhere=True)
    for fold in left_out + [str(k) for k in range(FOLDS)]: run("painted-only", SMALL, fold, with_ground, True)
    for fold in left_out + [str(k) for k in range(FOLDS)]: run("painted-only", SMALL, fold, painted)
    json.dump(dict(marks=MARKS, labels={i: row["labels"] for i, row in rows.items()}, runs=runs), open(f"{args.to}/answers.json", "w"))
    encoder = Encoder(args.weights)
    export(final, encoder, f"{args.to}/signs.onnx")
    cases = []
    for k in range(3):
        x = made_up(k)
        with torch.no_grad(): logits, strange = answer(final, encoder.see(x[:, :3], x[:, 3:])[:, None])
        cases.append(dict(logits=logits[0, 0].tolist(), strangeness=float(strange[0])))
    json.dump(cases, open(f"{args.to}/check.json", "w"))


if __name__ == "__main__":
    main()

"""Trains the network of signs and everything it is compared with. Run where PyTorch and a graphics card are at hand:

    python3 train.py --data FOLDER --to OUT [--plan PLAN] [--steps 900]

FOLDER: `photos.jsonl` and `crops/` as `cut-photos.ts` writes them; `rendered.jsonl`, `rendered-rgb.bin` and `rendered-leaf.bin` as
`render-crops.ts` does, if there. A plan is a line of runs `data:size:sees:fold`, parted by blanks: data `real`, `rendered`, `both`, `painted` (real
with marks painted on), `all`; fold `all`, `without-SET`, or 0 to 4 (a fifth of the groups held back). Every run is seeded, writes the answers
on what it never saw to `OUT/RUN.npz`, and is skipped where that file stands. `fold` all is the network to ship: `OUT/RUN.pt`.
"""
import argparse, json, math, os, time
import cv2, numpy as np, torch, torch.nn as nn, torch.nn.functional as F
from augment import photograph
from labels import MARKS, labels_of
from network import SignsNetwork
from paint import paint

DEV = "cuda" if torch.cuda.is_available() else "cpu"
FOLDS = 5


def hash_of(text):
    """FNV-1a: the same fold on every machine."""
    value = 2166136261
    for c in text.encode(): value = ((value ^ c) * 16777619) & 0xFFFFFFFF
    return value


def load_real(folder):
    rows = [row for row in map(json.loads, open(f"{folder}/photos.jsonl")) if row["cut"]]
    rgb = np.stack([cv2.imread(f"{folder}/crops/{r['id']}.jpg")[:, :, ::-1] for r in rows])
    leaf = np.stack([cv2.imread(f"{folder}/crops/{r['id']}.png", cv2.IMREAD_GRAYSCALE) for r in rows])
    for r in rows:
        r["labels"] = labels_of(r)
        r["fold"] = hash_of(f"{r['set']}/{r['group'] or r['file']}") % FOLDS
    return rows, torch.from_numpy(rgb.copy()).permute(0, 3, 1, 2).contiguous(), torch.from_numpy(leaf)[:, None]


def load_rendered(folder):
    if not os.path.exists(f"{folder}/rendered.jsonl"): return [], None, None
    rows = [json.loads(line) for line in open(f"{folder}/rendered.jsonl")]
    side = rows[0]["side"]
    rgb = np.fromfile(f"{folder}/rendered-rgb.bin", np.uint8).reshape(len(rows), side, side, 3)
    leaf = np.fromfile(f"{folder}/rendered-leaf.bin", np.uint8).reshape(len(rows), 1, side, side)
    return rows, torch.from_numpy(rgb).permute(0, 3, 1, 2).contiguous(), torch.from_numpy(leaf)


def table_of(rows):
    return torch.tensor([[row["labels"].get(mark, -1) for mark in MARKS] for row in rows], dtype=torch.float32).view(-1, len(MARKS))


class Pool:
    """Examples on the card, drawn so that every set and label is met alike."""

    def __init__(self, rows, rgb, leaf, chosen, device=DEV):
        self.rgb, self.leaf = rgb[chosen].to(device), leaf[chosen].to(device)
        self.labels = table_of([rows[i] for i in chosen]).to(device)
        keys = [f"{rows[i].get('set', '')}/{rows[i].get('label', '')}" for i in chosen]
        count = {key: keys.count(key) for key in set(keys)}
        self.weights = torch.tensor([count[key] ** -0.6 for key in keys], device=device)

    def draw(self, n):
        at = torch.multinomial(self.weights, n, replacement=True)
        return self.rgb[at].float() / 255, self.leaf[at].float() / 255, self.labels[at]


def balance_of(pools):
    """Weights by which the leaves with and without a mark count alike, none above 6."""
    labels = torch.cat([pool.labels for pool in pools])
    weights = torch.cat([pool.weights / pool.weights.sum() for pool in pools])[:, None]
    there, missing = ((labels == 1) * weights).sum(0), ((labels == 0) * weights).sum(0)
    return (missing / there.clamp(min=1e-6)).clamp(1 / 6, 6).sqrt()


@torch.no_grad()
def answers_of(net, rgb, leaf):
    """Logits from four views (as is, mirrored, upside down, both) and the features of the first."""
    net.eval()
    logits, features = [], []
    for at in torch.arange(len(rgb)).split(128):
        x = torch.cat([rgb[at].to(DEV).float(), leaf[at].to(DEV).float()], 1) / 255
        views = [net(v) for v in (x, x.flip(3), x.flip(2), x.flip(2, 3))]
        logits.append(torch.stack([v[0] for v in views], 1).float().cpu())
        features.append(views[0][1].float().cpu())
    return torch.cat(logits).numpy(), torch.cat(features).numpy()


def is_kept_back(row, fold):
    if fold.startswith("without-"): return row["set"] == fold.removeprefix("without-")
    return fold.isdigit() and row["fold"] == int(fold)


def train(run, real, rendered, args):
    data, size, sees, fold = run.split(":")
    torch.manual_seed(hash_of(run) % 2**31)
    rows, rgb, leaf = real
    names = [i for i, row in enumerate(rows) if row["set"] != "other"]
    taught = [i for i in names if not is_kept_back(rows[i], fold)]
    kept = [i for i in range(len(rows)) if i not in set(taught)] if data != "rendered" else list(range(len(rows)))
    pools = []
    if data in ("real", "both", "painted", "all"): pools.append(Pool(rows, rgb, leaf, taught))
    if data in ("rendered", "both", "all"): pools.append(Pool(*rendered, list(range(len(rendered[0])))))
    grounds = rgb[taught if data != "rendered" else names].to(DEV)
    weight = balance_of(pools)
    net = SignsNetwork(size, len(MARKS), sees).to(DEV).to(memory_format=torch.channels_last)
    best = torch.optim.swa_utils.AveragedModel(net, multi_avg_fn=torch.optim.swa_utils.get_ema_multi_avg_fn(0.995), use_buffers=True)
    opt = torch.optim.AdamW(net.parameters(), args.rate, weight_decay=0.05)
    start = time.time()
    for step in range(args.steps):
        for g in opt.param_groups: g["lr"] = args.rate * min(1, (step + 1) / 100) * (0.5 + 0.5 * math.cos(math.pi * step / args.steps)) + 1e-6
        with torch.no_grad():
            parts = [pool.draw(args.batch // len(pools)) for pool in pools]
            if data in ("painted", "all"): parts[0] = paint(*parts[0], MARKS, 0.5)
            colour, shape, labels = (torch.cat(p) for p in zip(*parts))
            x = photograph(colour, shape, grounds).to(memory_format=torch.channels_last)
        with torch.autocast(DEV, torch.bfloat16): z, _ = net(x)
        loss = F.binary_cross_entropy_with_logits(z.float(), labels.clamp(min=0) * 0.96 + 0.02, reduction="none")
        known = (labels >= 0) * torch.where(labels == 1, weight, 1 / weight)
        loss = (loss * known).sum() / known.sum()
        opt.zero_grad(set_to_none=True); loss.backward()
        nn.utils.clip_grad_norm_(net.parameters(), 1.0)
        opt.step(); best.update_parameters(net)
        if (step + 1) % 300 == 0: print(f"{run} {step + 1} steps, {time.time() - start:.0f} s, loss {loss.item():.3f}", flush=True)
    logits, features = answers_of(best.module, rgb[kept], leaf[kept])
    extra = {}
    if fold == "all":
        torch.save(best.module.state_dict(), f"{args.to}/{run.replace(':', '-')}.pt")
        logits_of_taught, features_of_taught = answers_of(best.module, rgb[taught], leaf[taught])
        extra = dict(taught=np.array([rows[i]["id"] for i in taught]), taughtLogits=logits_of_taught, taughtFeatures=features_of_taught)
    else:
        extra = dict(taughtFeatures=answers_of(best.module, rgb[taught], leaf[taught])[1].astype(np.float16)) if taught and data != "rendered" else {}
    np.savez_compressed(f"{args.to}/{run.replace(':', '-')}.npz", ids=np.array([rows[i]["id"] for i in kept]), logits=logits, features=features, **extra)
    print(f"{run} done in {time.time() - start:.0f} s: {quick_look(rows, kept, logits)}", flush=True)


def auc(there, missing):
    """Share of pairs put in the right order."""
    if len(there) < 3 or len(missing) < 3: return None
    return float(np.mean((there[:, None] > missing[None]) + 0.5 * (there[:, None] == missing[None])))


def quick_look(rows, kept, logits):
    """Ranking by set and mark on what was kept back."""
    mean, out = logits.mean(1), {}
    for name in sorted({rows[i]["set"] for i in kept}):
        for k, mark in enumerate(MARKS):
            said = np.array([rows[i]["labels"].get(mark, -1) if rows[i]["set"] == name else -1 for i in kept])
            value = auc(mean[said == 1, k], mean[said == 0, k])
            if value is not None: out[f"{name.split('-')[0]} {mark}"] = round(value, 3)
    return out


def main():
    a = argparse.ArgumentParser()
    a.add_argument("--data", required=True); a.add_argument("--to", required=True); a.add_argument("--plan", required=True)
    a.add_argument("--steps", type=int, default=900); a.add_argument("--batch", type=int, default=192); a.add_argument("--rate", type=float, default=2.5e-3)
    args = a.parse_args()
    os.makedirs(args.to, exist_ok=True)
    torch.backends.cudnn.benchmark = True
    real, rendered = load_real(args.data), load_rendered(args.data)
    print(len(real[0]), "photographs,", len(rendered[0]), "rendered", flush=True)
    for run in args.plan.split():
        if not os.path.exists(f"{args.to}/{run.replace(':', '-')}.npz"): train(run, real, rendered, args)


if __name__ == "__main__":
    main()

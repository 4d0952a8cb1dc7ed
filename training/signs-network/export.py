"""Writes the network to ship: the three experts in one ONNX graph, weights as whole numbers of 8 bits.

    python3 export.py --data FOLDER --experts A.npz,B.npz --weights A.pt --to OUT

OUT gets `signs.onnx` and `check.json` (what PyTorch makes of made-up inputs, for the tests). Also prints how far the rounding of the
weights moves the answers on photographs. The graph takes `crop` (1, 4, 224, 224): red, green, blue and the leaf's share of each pixel, all
from -1 to 1, and gives `logits` (1, 3 · marks) of one expert after the other, `features` (1, 192) and `strangeness` (1, 1).
"""
import argparse, json, os
import numpy as np, onnx, torch, torch.nn as nn
from onnx import TensorProto, helper, numpy_helper
from PIL import Image
from answers import EXPERTS, NO_LEAF, Answers, photos_of, speaks_of, strangeness_parts
from labels import MARKS
from network import FEATURES, SignsNetwork

SIDE = 224


def round_weights(w):
    """Rows of whole numbers of 8 bits, and what each row is multiplied by, a float of 16 bits."""
    scale = (np.abs(w.reshape(len(w), -1)).max(1) / 127).clip(min=1e-5).astype(np.float16).astype(np.float32)
    return np.round(w / scale.reshape(-1, *[1] * (w.ndim - 1))).clip(-127, 127).astype(np.int8), scale


def plain(net):
    """The same network without batch normalisation, its weights rounded as they ship."""
    for block in [m for m in net.modules() if isinstance(m, nn.Sequential)]:
        layers = list(block)
        for a, b in zip(layers, layers[1:]):
            if isinstance(a, nn.Conv2d) and isinstance(b, nn.BatchNorm2d):
                gain = b.weight / (b.running_var + b.eps).sqrt()
                a.weight.data = a.weight * gain.view(-1, 1, 1, 1)
                a.bias = nn.Parameter(b.bias - b.running_mean * gain)
                b.weight.data.fill_(1); b.bias.data.zero_(); b.running_mean.zero_(); b.running_var.fill_(1 - b.eps)
    for m in net.modules():
        if isinstance(m, (nn.Conv2d, nn.Linear)):
            whole, scale = round_weights(m.weight.detach().numpy())
            m.weight.data = torch.from_numpy(whole.astype(np.float32) * scale.reshape(-1, *[1] * (whole.ndim - 1)))
    return net.eval()


class Graph:
    def __init__(self): self.nodes, self.tensors = [], []

    def keep(self, name, value, kind=np.float32):
        self.tensors.append(numpy_helper.from_array(np.ascontiguousarray(np.asarray(value, kind)), name))
        return name

    def do(self, op, inputs, name, **attributes):
        self.nodes.append(helper.make_node(op, inputs, [name], **attributes))
        return name

    def weights(self, name, w):
        """Whole numbers, cast and multiplied row by row."""
        whole, scale = round_weights(w)
        shape = [-1] + [1] * (w.ndim - 1)
        cast = self.do("Cast", [self.keep(f"{name}.whole", whole, np.int8)], f"{name}.cast", to=TensorProto.FLOAT)
        rows = self.do("Cast", [self.keep(f"{name}.scale", scale.reshape(shape), np.float16)], f"{name}.rows", to=TensorProto.FLOAT)
        return self.do("Mul", [cast, rows], f"{name}.w")

    def conv(self, x, m, name):
        # What is left out stands at its default: stride and group 1, padding 0.
        told = ({"strides": [2, 2]} if m.stride[0] == 2 else {}) | ({"pads": [m.padding[0]] * 4} if m.padding[0] else {}) | ({"group": m.groups} if m.groups > 1 else {})
        return self.do("Conv", [x, self.weights(name, m.weight.detach().numpy()), self.keep(f"{name}.b", m.bias.detach().numpy())], name, **told)

    def linear(self, x, m, name, rows=slice(None)):
        return self.do("Gemm", [x, self.weights(name, m.weight.detach().numpy()[rows]), self.keep(f"{name}.b", m.bias.detach().numpy()[rows])], name, transB=1)

    def run(self, x, layers, name):
        for k, m in enumerate(layers):
            if isinstance(m, nn.Conv2d): x = self.conv(x, m, f"{name}.{k}")
            elif isinstance(m, nn.ReLU): x = self.do("Relu", [x], f"{name}.{k}")
        return x

    def expert(self, net, name, leaf):
        x = self.run("crop", net.stem, f"{name}.stem")
        for s, stage in enumerate(net.stages):
            for b, block in enumerate(stage):
                at, y = f"{name}.{s}.{b}", x
                for k, part in enumerate(block.body): y = self.run(y, part, f"{at}.{k}")
                x = self.do("Add", [x, y], f"{at}.sum") if block.adds else y
        x = self.run(x, net.last, f"{name}.last")
        on = self.do("Mul", [x, leaf], f"{name}.on")
        area = self.do("Max", [self.do("ReduceSum", [leaf], f"{name}.area0", axes=[2, 3], keepdims=0), self.keep(f"{name}.least", [[0.5]])], f"{name}.area")
        mean = self.do("Div", [self.do("ReduceSum", [on], f"{name}.sum", axes=[2, 3], keepdims=0), area], f"{name}.mean")
        most = self.do("ReduceMax", [on], f"{name}.most", axes=[2, 3], keepdims=0)
        features = self.do("Relu", [self.linear(self.do("Concat", [mean, most], f"{name}.pooled", axis=1), net.features, f"{name}.features0")], f"{name}.features")
        logits = self.linear(features, net.marks, f"{name}.logits", slice(0, len(MARKS)))
        return features, logits, self.linear(features, net.marks, f"{name}.leaf", slice(len(MARKS), None))


def strangeness_of(graph, features, leaves, parts):
    """Half the distance of each expert taught on photographs, and how little the picture looks like a leaf."""
    terms = []
    for k, (own, (middle, inverse)) in enumerate(zip(features, parts)):
        away = graph.do("Sub", [own, graph.keep(f"middle.{k}", middle[None])], f"away.{k}")
        turned = graph.do("Gemm", [away, graph.keep(f"turn.{k}", np.linalg.cholesky(inverse)), graph.keep(f"nil.{k}", np.zeros(FEATURES))], f"turned.{k}")
        square = graph.do("Mul", [turned, turned], f"square.{k}")
        terms.append(graph.do("Gemm", [square, graph.keep(f"half.{k}", np.full((FEATURES, 1), 0.5)), graph.keep(f"nil1.{k}", [0])], f"far.{k}"))
    together = graph.do("Add", [graph.do("Add", leaves[:2], "looks.two"), leaves[2]], "looks.three")
    lack = graph.do("Relu", [graph.do("Sub", [graph.keep("one", [[1]]), graph.do("Mul", [together, graph.keep("third", [[1 / 3]])], "looks.mean")], "lack0")], "lack")
    return graph.do("Add", [graph.do("Add", terms, "far"), graph.do("Mul", [lack, graph.keep("weight", [[NO_LEAF]])], "lacking")], "strangeness")


def export(nets, parts, path):
    graph = Graph()
    # The leaf's share is cut off by a 1 x 1 convolution, back to 0-1, and brought to the size of the last layer.
    leaf = graph.do("Conv", ["crop", graph.keep("of.leaf", 0.5 * np.eye(4)[3].reshape(1, 4, 1, 1)), graph.keep("half", [0.5])], "leaf0", kernel_shape=[1, 1])
    for k in range(4): leaf = graph.do("AveragePool", [leaf], f"leaf{k + 1}", kernel_shape=[2, 2], strides=[2, 2])
    features, logits, leaves = zip(*[graph.expert(net, name, leaf) for net, name in zip(nets, EXPERTS)])
    graph.do("Concat", list(logits), "logits", axis=1)
    graph.do("Concat", list(features), "features", axis=1)
    strangeness_of(graph, features, list(leaves), parts)
    info = lambda name, shape: helper.make_tensor_value_info(name, TensorProto.FLOAT, shape)
    outputs = [info("logits", [1, 3 * len(MARKS)]), info("features", [1, 3 * FEATURES]), info("strangeness", [1, 1])]
    model = helper.make_model(helper.make_graph(graph.nodes, "signs", [info("crop", [1, 4, SIDE, SIDE])], outputs, graph.tensors),
                              opset_imports=[helper.make_opsetid("", 12)], producer_name="bedside")
    model.ir_version = 7
    shorten(model.graph)
    onnx.checker.check_model(model)
    onnx.save(model, path)


def shorten(graph):
    """Numbers instead of names, which were a fiftieth of the file."""
    ends = {one.name for one in [*graph.input, *graph.output]}
    short = {}
    number = lambda name: name if name in ends or not name else short.setdefault(name, f"{len(short):x}")
    for node in graph.node:
        node.input[:] = [number(name) for name in node.input]
        node.output[:] = [number(name) for name in node.output]
    for tensor in graph.initializer: tensor.name = number(tensor.name)


def made_up(k):
    """An input that any language can make: waves in the colours, a wavy leaf; from -1 to 1."""
    c, y, x = np.meshgrid(np.arange(4), np.arange(SIDE), np.arange(SIDE), indexing="ij")
    wave = np.sin(0.045 * (c + 1) * x + 0.06 * (k + 1) * y + c)
    return torch.tensor(np.where(c < 3, 0.6 * wave - 0.2, np.where(wave > -0.3, 1.0, -1.0)).astype(np.float32))[None]


@torch.no_grad()
def answer(nets, parts, x):
    """Logits of the experts (3, n, marks), features and strangeness, as the graph gives them; `x` from -1 to 1."""
    said = [net((x + 1) / 2) for net in nets]
    far = sum(0.5 * torch.einsum("ij,jk,ik->i", f - m, c, f - m) for (_, f), (m, c) in zip(said, [[torch.tensor(p, dtype=torch.float32) for p in pair] for pair in parts]))
    leaf = torch.stack([z[:, -1] for z, _ in said]).mean(0)
    return torch.stack([z[:, : len(MARKS)] for z, _ in said]), torch.cat([f for _, f in said], 1), far + NO_LEAF * (1 - leaf).clamp(min=0)


def main():
    a = argparse.ArgumentParser()
    for name in ("data", "experts", "weights", "to"): a.add_argument(f"--{name}", required=True)
    args = a.parse_args()
    torch.set_num_threads(2)
    os.makedirs(args.to, exist_ok=True)
    answers, weights = Answers(*args.experts.split(",")), torch.load(args.weights, map_location="cpu")
    names = [f"{expert}:large:mask:plain:{'none' if expert == 'rendered' else 'all'}" for expert in EXPERTS]
    parts = [strangeness_parts(answers.of[name]["taught"].astype(np.float64)) for name in names[:2]]
    nets = []
    for name in names:
        net = SignsNetwork("large", len(MARKS) + 1)
        net.load_state_dict({k: v.float() if v.is_floating_point() else v for k, v in weights[name].items()})
        nets.append(plain(net))
    export(nets, parts, f"{args.to}/signs.onnx")
    cases = []
    for k in range(3):
        logits, features, strange = answer(nets, parts, made_up(k))
        cases.append(dict(logits=[round(v, 6) for v in logits[:, 0].flatten().tolist()], strangeness=float(strange[0])))
    json.dump(cases, open(f"{args.to}/check.json", "w"))
    rows = photos_of(args.data)
    ids = [i for i, row in rows.items() if row["cut"]][::60]
    off = []
    for i in ids:
        rgb, leaf = Image.open(f"{args.data}/crops/{i}.jpg").convert("RGB"), Image.open(f"{args.data}/crops/{i}.png").convert("L")
        x = torch.from_numpy(np.dstack([np.array(rgb), np.array(leaf)]).astype(np.float32) / 127.5 - 1).permute(2, 0, 1)[None]
        said = answer(nets, parts, x)[0][:, 0].numpy()
        off += [np.abs(said[e] - answers.by_id(name, "logits")[i][0, : len(MARKS)]).mean() for e, name in enumerate(names)]
    print(f"{os.path.getsize(args.to + '/signs.onnx')} bytes; log odds moved by {np.mean(off):.3f} on average, {np.max(off):.3f} at most")
    share = speaks_of(rows) > 0
    print({expert: [mark for mark, speaks in zip(MARKS, own) if not speaks] for expert, own in zip(EXPERTS, share)}, "are left to the others")


if __name__ == "__main__":
    main()

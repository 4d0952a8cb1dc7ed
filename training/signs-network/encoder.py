"""The outline network's own way down (`training/outline-network`), kept as it is: what it learnt to see of leaves, from 1,052 outlines, is
what marks are told by. Of each of its four scales the mean, spread and maximum over the leaf are taken, and of the colours themselves."""
import base64, re
import numpy as np, torch, torch.nn.functional as F

SIDE = 160
WIDTHS = [24, 48, 96, 128]
STAGES = [("stem", "e1", 2), ("d2", "e2", 3), ("d3", "e3", 4), ("d4", "e4", 8)]


def weights_of(path):
    """Layers of `src/leaf/outline-network.ts` as {name: (weights, bias)}."""
    text = open(path).read()
    layers = [(name, int(size), int(channels)) for name, size, channels in re.findall(r"\['([\w.]+)', (\d+), (\d+)\]", text)]
    coded = {name: base64.b64decode(re.search(rf"{name} =\s*'([^']+)'", text).group(1)) for name in ("SCALES", "WEIGHTS")}
    whole, parts = np.frombuffer(coded["WEIGHTS"], np.int8), np.frombuffer(coded["SCALES"], np.float32)
    out, at, part = {}, 0, 0
    for name, size, channels in layers:
        scale, bias = parts[part:part + channels], parts[part + channels:part + 2 * channels]
        out[name] = (whole[at:at + size].reshape(channels, -1) * scale[:, None], bias)
        at, part = at + size, part + 2 * channels
    return {k: (torch.tensor(w, dtype=torch.float32), torch.tensor(b)) for k, (w, b) in out.items()}


def to_lab(rgb):
    """sRGB 0-1 (n,3,h,w) to CIELAB under D65 (IEC 61966-2-1, CIE 15)."""
    lin = torch.where(rgb <= 0.04045, rgb / 12.92, ((rgb.clamp(min=0.04045) + 0.055) / 1.055) ** 2.4)
    m = torch.tensor([[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750], [0.0193339, 0.1191920, 0.9503041]])
    xyz = torch.einsum("ij,njhw->nihw", m, lin) / torch.tensor([0.95047, 1.0, 1.08883]).view(1, 3, 1, 1)
    f = torch.where(xyz > 216 / 24389, xyz.clamp(min=1e-6) ** (1 / 3), (24389 / 27 * xyz + 16) / 116)
    return torch.stack([116 * f[:, 1] - 16, 500 * (f[:, 0] - f[:, 1]), 200 * (f[:, 1] - f[:, 2])], 1)


def bell(side=SIDE):
    """The tap that the encoder expects: a finger on the middle of the leaf."""
    at = torch.arange(side) + 0.5 - side / 2
    return torch.exp(-(at[:, None] ** 2 + at[None] ** 2) / 72)[None, None]


def pooled(x, leaf):
    """Mean, spread and maximum over the leaf."""
    whole = leaf.sum((2, 3)).clamp(min=1e-3)
    mean = (x * leaf).sum((2, 3)) / whole
    spread = ((x * x * leaf).sum((2, 3)) / whole - mean * mean).clamp(min=0).add(1e-6).sqrt()
    return torch.cat([mean, spread, (x * leaf).amax((2, 3))], 1)


class Encoder:
    def __init__(self, path):
        self.layers = weights_of(path)

    def conv(self, x, name, stride=1, deep=False):
        w, b = self.layers[name]
        groups = x.shape[1] if deep else 1
        size = round((w.shape[1] // (x.shape[1] // groups)) ** 0.5)
        return F.conv2d(x, w.view(w.shape[0], x.shape[1] // groups, size, size), b, stride, size // 2, groups=groups)

    def __call__(self, rgb, leaf, everywhere=False):
        """(n,3,s,s) and (n,1,s,s), 0-1, to (n, FEATURES); `everywhere` takes the ground along, for comparison."""
        lab = to_lab(rgb)
        return self.see(torch.cat([lab[:, :1] / 50 - 1, lab[:, 1:] / 40], 1), torch.ones_like(leaf) if everywhere else leaf)

    def see(self, lab, leaf):
        """The same of L* / 50 - 1, a* / 40, b* / 40."""
        x = torch.cat([lab, bell(lab.shape[-1]).expand(len(lab), -1, -1, -1), torch.zeros_like(leaf)], 1)
        out = [pooled(lab + 2, leaf)]
        for name, blocks, n in STAGES:
            if name == "stem": x = F.relu(self.conv(x, "stem", 2))
            else: x = F.relu(self.conv(F.relu(self.conv(x, f"{name}.deep", 2, True)), f"{name}.point"))
            for k in range(n): x = F.relu(x + self.conv(F.relu(self.conv(x, f"{blocks}.{k}.deep", 1, True)), f"{blocks}.{k}.point"))
            leaf = F.avg_pool2d(leaf, 2)
            out.append(pooled(x, leaf))
        return torch.cat(out, 1)


FEATURES = 3 * (3 + sum(WIDTHS))

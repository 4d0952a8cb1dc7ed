"""The network of signs: inverted residuals (Sandler et al. 2018, MobileNetV2), kept at a sixteenth of the picture so that small
spots survive, then mean and maximum over the leaf, so that one spot counts as well as powder all over."""
import torch, torch.nn as nn, torch.nn.functional as F

FEATURES = 64
# (expansion, channels, repeats, stride) after a first convolution of `stem` channels that halves the picture.
SIZES = {
    "small": dict(stem=16, blocks=[(1, 16, 1, 1), (3, 24, 2, 2), (4, 40, 3, 2), (4, 64, 4, 2), (4, 80, 2, 1)], head=256),
    "large": dict(stem=24, blocks=[(1, 24, 1, 1), (4, 32, 3, 2), (4, 56, 4, 2), (5, 96, 5, 2), (5, 120, 2, 1)], head=384),
}


def conv(cin, cout, size, stride=1, groups=1, act=True):
    layers = [nn.Conv2d(cin, cout, size, stride, size // 2, groups=groups, bias=False), nn.BatchNorm2d(cout)]
    return nn.Sequential(*layers, *([nn.ReLU(inplace=True)] if act else []))


class Block(nn.Module):
    def __init__(self, cin, cout, stride, expansion):
        super().__init__()
        mid = cin * expansion
        self.body = nn.Sequential(*([conv(cin, mid, 1)] if expansion > 1 else []), conv(mid, mid, 3, stride, mid), conv(mid, cout, 1, act=False))
        self.adds = stride == 1 and cin == cout

    def forward(self, x):
        return x + self.body(x) if self.adds else self.body(x)


def mix_styles(x):
    """Mean and spread of a layer taken in part from another picture (Zhou et al. 2021, MixStyle), so that a camera or a crop's
    colour cannot carry the answer; on half of the pictures."""
    n, device = len(x), x.device
    mean, spread = x.mean((2, 3), keepdim=True), (x.var((2, 3), keepdim=True) + 1e-5).sqrt()
    share = torch.rand(n, 1, 1, 1, device=device)
    share = torch.where(torch.rand(n, 1, 1, 1, device=device) < 0.5, share, torch.ones_like(share)).to(x.dtype)
    other = torch.rand(n, device=device).argsort()
    mean_to, spread_to = (share * own.detach() + (1 - share) * own.detach()[other] for own in (mean, spread))
    return (x - mean.detach()) / spread.detach() * spread_to + mean_to


class SignsNetwork(nn.Module):
    """`forward` takes (n, 4, side, side): red, green, blue and the leaf's share of each pixel, all 0-1, and gives logits (n, outputs)
    and features (n, 64).

    sees: `mask` all four, pooled over the leaf; `colour` red, green and blue alone, pooled over the picture. styles: `mixed` or `plain`."""

    def __init__(self, size, outputs, sees="mask", styles="plain"):
        super().__init__()
        plan = SIZES[size]
        self.sees, self.styles = sees, styles
        self.stem = conv(4 if sees == "mask" else 3, plan["stem"], 3, 2)
        stages, cin = [], plan["stem"]
        for expansion, channels, repeats, stride in plan["blocks"]:
            blocks = []
            for k in range(repeats):
                blocks.append(Block(cin, channels, stride if k == 0 else 1, expansion))
                cin = channels
            stages.append(nn.Sequential(*blocks))
        self.stages = nn.ModuleList(stages)
        self.last = conv(cin, plan["head"], 1)
        self.features = nn.Linear(2 * plan["head"], FEATURES)
        self.marks = nn.Linear(FEATURES, outputs)
        self.drop = nn.Dropout(0.2)

    def forward(self, x):
        leaf = x[:, 3:4]
        y = self.stem(x * 2 - 1 if self.sees == "mask" else x[:, :3] * 2 - 1)
        for k, stage in enumerate(self.stages):
            y = stage(y)
            if self.training and self.styles == "mixed" and k in (0, 1, 2): y = mix_styles(y)
        y = self.last(y)
        if self.sees == "mask":
            at = leaf
            for _ in range(4): at = F.avg_pool2d(at, 2)
            at = at.to(y.dtype)
            mean = (y * at).sum((2, 3)) / at.sum((2, 3)).clamp(min=0.5)
            most = (y * at).amax((2, 3))
        else: mean, most = y.mean((2, 3)), y.amax((2, 3))
        features = F.relu(self.features(torch.cat([mean, most], 1)))
        return self.marks(self.drop(features)), features

"""The network of signs: inverted residuals (Sandler et al. 2018, MobileNetV2), kept at a sixteenth of the picture so that small
spots survive, then mean and maximum over the picture, so that one spot counts as well as powder all over."""
import torch, torch.nn as nn, torch.nn.functional as F

FEATURES = 128
# (expansion, channels, repeats, stride) after a first convolution of `stem` channels that halves the picture.
SIZES = {
    "small": dict(stem=16, blocks=[(1, 16, 1, 1), (3, 24, 2, 2), (4, 40, 3, 2), (4, 64, 4, 2), (4, 80, 2, 1)], head=256),
    "large": dict(stem=24, blocks=[(1, 24, 1, 1), (4, 32, 3, 2), (4, 56, 4, 2), (5, 96, 5, 2), (5, 120, 2, 1)], head=384),
}


def conv(cin, cout, size, stride=1, groups=1, act=True):
    layers = [nn.Conv2d(cin, cout, size, stride, size // 2, groups=groups, bias=False), nn.BatchNorm2d(cout)]
    return nn.Sequential(*layers, *([nn.ReLU6(inplace=True)] if act else []))


class Block(nn.Module):
    def __init__(self, cin, cout, stride, expansion):
        super().__init__()
        mid = cin * expansion
        self.body = nn.Sequential(*([conv(cin, mid, 1)] if expansion > 1 else []), conv(mid, mid, 3, stride, mid), conv(mid, cout, 1, act=False))
        self.adds = stride == 1 and cin == cout

    def forward(self, x):
        return x + self.body(x) if self.adds else self.body(x)


class SignsNetwork(nn.Module):
    """`forward` takes (n, 4, side, side): red, green, blue and the leaf's share of each pixel, all 0-1, and gives logits and features.

    sees: `mask` all four, `colour` red, green and blue alone, `leaf` the colours with all ground greyed."""

    def __init__(self, size, marks, sees="mask"):
        super().__init__()
        plan = SIZES[size]
        self.sees = sees
        layers, cin = [conv(4 if sees == "mask" else 3, plan["stem"], 3, 2)], plan["stem"]
        for expansion, channels, repeats, stride in plan["blocks"]:
            for k in range(repeats):
                layers.append(Block(cin, channels, stride if k == 0 else 1, expansion))
                cin = channels
        self.body = nn.Sequential(*layers, conv(cin, plan["head"], 1))
        self.features = nn.Linear(2 * plan["head"], FEATURES)
        self.marks = nn.Linear(FEATURES, marks)
        self.drop = nn.Dropout(0.2)

    def forward(self, x):
        colours, leaf = x[:, :3] * 2 - 1, x[:, 3:4]
        if self.sees == "leaf": colours = colours * leaf
        y = self.body(torch.cat([colours, leaf * 2 - 1], 1) if self.sees == "mask" else colours)
        y = torch.cat([y.mean((2, 3)), y.amax((2, 3))], 1)
        features = F.relu(self.features(y))
        return self.marks(self.drop(features)), features

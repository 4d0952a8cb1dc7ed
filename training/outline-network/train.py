"""Trains the small network that guesses, from a coarse picture and a tap, which pixels are the tapped leaf.

Run where PyTorch and a GPU are at hand:

    python3 train.py --data FOLDER --to OUT --minutes 8 [--from OUT/network.pt]

FOLDER holds `index.jsonl` (id, accepted), and for each id `id.jpg` (longest side 256 px) and `id.png` (outline, 255 = leaf),
as `label-outlines.ts` writes them; OUT receives `outline-network.json` (weights as whole numbers with a scale for each
output channel), `check.json` (an input and what the network makes of it, for the test of the port), `network.pt`, and a sheet
of the outlines that the network disagrees with most, to be looked through.

Outlines of the field photographs come from the camera's own cuts, looked through by eye and only the good ones kept. Where the
camera failed, corners were set by hand (`drawn-outlines.json`; `snap` carries them to the edge). Hard scenes are then made by
laying leaves over other photographs (copy and paste; Ghiasi et al. 2021, "Simple copy-paste is a strong data augmentation method
for instance segmentation"), where the truth is known: leaflets of one stalk, fingers over and under the leaf, shadows of leaves.
"""
import argparse, base64, json, math, os, time
import cv2, numpy as np, torch, torch.nn as nn, torch.nn.functional as F

SIDE = 128
SOURCE = 256
DEV = "cuda" if torch.cuda.is_available() else "cpu"


def to_lab(rgb):
    """sRGB 0-1 (n,3,h,w) to CIELAB under D65 (IEC 61966-2-1, CIE 15)."""
    lin = torch.where(rgb <= 0.04045, rgb / 12.92, ((rgb.clamp(min=0.04045) + 0.055) / 1.055) ** 2.4)
    m = torch.tensor([[0.4124564, 0.3575761, 0.1804375], [0.2126729, 0.7151522, 0.0721750], [0.0193339, 0.1191920, 0.9503041]], device=rgb.device)
    xyz = torch.einsum("ij,njhw->nihw", m, lin) / torch.tensor([0.95047, 1.0, 1.08883], device=rgb.device).view(1, 3, 1, 1)
    f = torch.where(xyz > 216 / 24389, xyz.clamp(min=1e-6) ** (1 / 3), (24389 / 27 * xyz + 16) / 116)
    return torch.stack([116 * f[:, 1] - 16, 500 * (f[:, 0] - f[:, 1]), 200 * (f[:, 1] - f[:, 2])], 1)


class Conv(nn.Module):
    """Convolution, batch norm folded at export, ReLU or not."""

    def __init__(self, cin, cout, size, stride=1, deep=False, relu=True):
        super().__init__()
        self.conv = nn.Conv2d(cin, cout, size, stride, size // 2, groups=cin if deep else 1, bias=False)
        self.norm = nn.BatchNorm2d(cout)
        self.relu = relu

    def forward(self, x):
        x = self.norm(self.conv(x))
        return F.relu(x) if self.relu else x


class Sep(nn.Module):
    def __init__(self, c):
        super().__init__()
        self.deep = Conv(c, c, 3, deep=True)
        self.point = Conv(c, c, 1, relu=False)

    def forward(self, x):
        return F.relu(x + self.point(self.deep(x)))


class Down(nn.Module):
    def __init__(self, cin, cout):
        super().__init__()
        self.deep = Conv(cin, cin, 3, 2, deep=True)
        self.point = Conv(cin, cout, 1)

    def forward(self, x):
        return self.point(self.deep(x))


class OutlineNetwork(nn.Module):
    def __init__(self):
        super().__init__()
        rep = lambda c, n: nn.Sequential(*[Sep(c) for _ in range(n)])
        self.stem, self.e1 = Conv(5, 24, 3, 2), rep(24, 2)
        self.d2, self.e2 = Down(24, 48), rep(48, 3)
        self.d3, self.e3 = Down(48, 96), rep(96, 4)
        self.d4, self.e4 = Down(96, 128), rep(128, 8)
        self.context = nn.Linear(128, 128)
        self.u3, self.f3 = Conv(128, 96, 1, relu=False), rep(96, 2)
        self.u2, self.f2 = Conv(96, 48, 1, relu=False), rep(48, 2)
        self.u1, self.f1 = Conv(48, 24, 1, relu=False), rep(24, 2)
        self.u0, self.fine, self.f0 = Conv(24, 16, 1, relu=False), Conv(5, 16, 3, relu=False), rep(16, 1)
        self.out = nn.Conv2d(16, 1, 1)

    def forward(self, x):
        up = lambda t: F.interpolate(t, scale_factor=2, mode="bilinear", align_corners=False)
        e1 = self.e1(self.stem(x))
        e2 = self.e2(self.d2(e1))
        e3 = self.e3(self.d3(e2))
        e4 = self.e4(self.d4(e3))
        e4 = F.relu(e4 + self.context(e4.mean((2, 3)))[:, :, None, None])
        f3 = self.f3(F.relu(up(self.u3(e4)) + e3))
        f2 = self.f2(F.relu(up(self.u2(f3)) + e2))
        f1 = self.f1(F.relu(up(self.u1(f2)) + e1))
        f0 = self.f0(F.relu(up(self.u0(f1)) + self.fine(x)))
        return self.out(f0)[:, 0]


def snap(image, corners, side):
    """Corners drawn by hand, in hundredths of the longest side, as a mask: rounded, then moved within a narrow band to where
    colours change most (watershed between what is surely leaf and surely not; Beucher and Lantuejoul 1979)."""
    h, w = image.shape[:2]
    points = np.array(corners, float).reshape(-1, 2) * side / 100
    n, curve = len(points), []
    for k in range(n):  # Catmull and Rom's spline
        a, b, c, d = points[k - 1], points[k], points[(k + 1) % n], points[(k + 2) % n]
        for t in np.arange(0, 1, 0.2):
            curve.append(0.5 * (2 * b + (c - a) * t + (2 * a - 5 * b + 4 * c - d) * t * t + (3 * b - a - 3 * c + d) * t ** 3))
    mask = np.zeros((h, w), np.uint8)
    cv2.fillPoly(mask, [np.round(np.array(curve) * 16).astype(np.int32)], 255, shift=4)
    reach = max(3, round(0.022 * side))
    disc = cv2.getStructuringElement(cv2.MORPH_ELLIPSE, (2 * reach + 1, 2 * reach + 1))
    inner, outer = cv2.erode(mask, disc), cv2.dilate(mask, disc)
    if inner.sum() == 0: return mask
    marks = np.zeros((h, w), np.int32); marks[inner > 0] = 1; marks[outer == 0] = 2
    lab = cv2.cvtColor(cv2.bilateralFilter(image, 5, 25, 3), cv2.COLOR_BGR2LAB)
    lab[:, :, 0] = lab[:, :, 0] * 0.6
    cv2.watershed(lab, marks)
    found = ((marks == 1) * 255).astype(np.uint8)
    rim = np.zeros_like(found); rim[0] = rim[-1] = 255; rim[:, 0] = rim[:, -1] = 255
    for where in (rim > 0, (rim == 0) & (marks == -1)):
        found = np.where(where & (cv2.dilate(found, np.ones((3, 3))) > 0), 255, found).astype(np.uint8)
    return cv2.medianBlur(found, 5)


def load(folder):
    """Pictures, outlines, sizes, whether the outline is good, and what is known of each; one entry for each outline."""
    here = os.path.dirname(os.path.abspath(__file__))
    drawn = {f.rsplit(".", 1)[0].replace("/", "--"): v for f, v in json.load(open(f"{here}/drawn-outlines.json")).items()}
    images, masks, sizes, good, rows = [], [], [], [], []
    for line in open(f"{folder}/index.jsonl"):
        row = json.loads(line)
        bgr = cv2.imread(f"{folder}/{row['id']}.jpg")
        h, w = bgr.shape[:2]
        outlines = [snap(bgr, corners, SOURCE) for corners in drawn.get(row["id"], [])]
        row["drawn"] = len(outlines) > 0
        if row["drawn"]: row["accepted"] = True
        for mask in outlines or [cv2.imread(f"{folder}/{row['id']}.png", 0)]:
            canvas = np.zeros((SOURCE, SOURCE, 3), np.uint8); canvas[:h, :w] = bgr[:, :, ::-1]
            flat = np.zeros((SOURCE, SOURCE), np.uint8); flat[:h, :w] = mask
            images.append(canvas); masks.append(flat); sizes.append((w, h)); good.append(row["accepted"]); rows.append(row)
    return (torch.from_numpy(np.stack(images)).to(DEV).permute(0, 3, 1, 2).contiguous(), torch.from_numpy(np.stack(masks)).to(DEV),
            torch.tensor(sizes, dtype=torch.float32, device=DEV), torch.tensor(good, device=DEV), rows)


def widen(t, size):
    """Largest value within a square of `size` px about each pixel, side by side: quicker than all at once."""
    reach = size // 2
    return F.max_pool2d(F.max_pool2d(t[:, None], (1, size), 1, (0, reach)), (size, 1), 1, (reach, 0))[:, 0]


def rand(n, lo=0.0, hi=1.0):
    return torch.rand(n, device=DEV) * (hi - lo) + lo


def crop(images, masks, sizes, idx, least):
    """A cut of each picture, turned by quarters and mirrored, at SIDE x SIDE."""
    n = len(idx)
    w, h = sizes[idx, 0], sizes[idx, 1]
    scale = rand(n, least, 1.0)
    cw, ch = w * (scale * rand(n, 0.85, 1.0)).clamp(max=1), h * scale
    # Half of them nearly square, so that long photographs are not always squeezed.
    side = (w * h).sqrt() * scale
    square = rand(n) < 0.5
    cw = torch.where(square, torch.minimum(w, side * rand(n, 0.9, 1.25)), cw)
    ch = torch.where(square, torch.minimum(h, side * rand(n, 0.9, 1.25)), ch)
    x0, y0 = rand(n) * (w - cw), rand(n) * (h - ch)
    u = (torch.arange(SIDE, device=DEV) + 0.5) / SIDE
    gy, gx = torch.meshgrid(u, u, indexing="ij")
    gx, gy = gx.expand(n, -1, -1), gy.expand(n, -1, -1)
    flip = (rand(n) < 0.5).view(-1, 1, 1); gx = torch.where(flip, 1 - gx, gx)
    flip = (rand(n) < 0.5).view(-1, 1, 1); gy = torch.where(flip, 1 - gy, gy)
    swap = (rand(n) < 0.5).view(-1, 1, 1); gx, gy = torch.where(swap, gy, gx), torch.where(swap, gx, gy)
    v = lambda t: t.view(-1, 1, 1)
    px, py = v(x0) + gx * v(cw), v(y0) + gy * v(ch)
    grid = torch.stack([px / SOURCE * 2 - 1, py / SOURCE * 2 - 1], -1)
    rgb = F.grid_sample(images[idx].float() / 255, grid, align_corners=False, padding_mode="border")
    mask = F.grid_sample(masks[idx].float()[:, None] / 255, grid, align_corners=False)[:, 0]
    return rgb, mask


def place(n, spread, low, high):
    """Where a leaf is to lie: middle, length and turn."""
    middle = SIDE / 2 + torch.stack([rand(n, -spread, spread), rand(n, -spread, spread)], 1) * SIDE
    return middle, rand(n, low, high) * SIDE, rand(n, 0, 2 * math.pi)


def beside(spot, way):
    """A leaflet on the same stalk as one that lies at `spot` and points the way `way`."""
    middle, want, _ = spot
    n = len(want)
    toward = lambda angle: torch.stack([angle.cos(), angle.sin()], 1)
    near = rand(n, 0.55, 1.0)
    stalk = middle - toward(way) * (0.5 * want * near)[:, None]
    turn = torch.where(rand(n) < 0.5, -1.0, 1.0) * rand(n, 0.7, 2.4)
    size = want * rand(n, 0.75, 1.2)
    return stalk + toward(way + turn) * (0.5 * size * near)[:, None], size, way + turn


def paste(images, masks, sizes, idx, boxes, spot):
    """Leaves cut out of their photographs, laid at `spot` (middle, length, turn), at SIDE x SIDE: colours and cover."""
    n = len(idx)
    size = (boxes[idx, 2:] - boxes[idx, :2]).max(1).values
    mid = (boxes[idx, 2:] + boxes[idx, :2]) / 2
    (cx, cy), want, angle = spot[0].unbind(1), spot[1], spot[2]
    p = torch.arange(SIDE, device=DEV) + 0.5
    gy, gx = torch.meshgrid(p, p, indexing="ij")
    v = lambda t: t.view(-1, 1, 1)
    stretch = rand(n, 0.8, 1.25)
    dx, dy = (gx - v(cx)), (gy - v(cy)) * v(stretch)
    ratio = v(size / want)
    sx = v(mid[:, 0]) + ratio * (dx * v(angle.cos()) - dy * v(angle.sin()))
    sy = v(mid[:, 1]) + ratio * (dx * v(angle.sin()) + dy * v(angle.cos()))
    grid = torch.stack([sx / SOURCE * 2 - 1, sy / SOURCE * 2 - 1], -1)
    rgb = F.grid_sample(images[idx].float() / 255, grid, align_corners=False, padding_mode="border")
    cover = F.grid_sample(masks[idx].float()[:, None] / 255, grid, align_corners=False)[:, 0]
    return rgb, ((cover - 0.5) * 1.6 + 0.42).clamp(0, 1)


def tint(rgb, amount):
    n = len(rgb)
    lin = rgb ** 2.2
    gain = torch.exp(torch.randn(n, 3, 1, 1, device=DEV) * 0.12 * amount + torch.randn(n, 1, 1, 1, device=DEV) * 0.3 * amount)
    rgb = (lin * gain).clamp(1e-5, 1) ** (1 / 2.2)
    grey = rgb.mean(1, keepdim=True)
    return (grey + (rgb - grey) * torch.exp(torch.randn(n, 1, 1, 1, device=DEV) * 0.2 * amount)).clamp(0, 1)


def tint_some(rgb, amount):
    """Half of the leaves keep their colours, so that neighbours of one plant look alike."""
    return torch.where((rand(len(rgb)) < 0.5).view(-1, 1, 1, 1), rgb, tint(rgb, amount))


def fingers(middle, reach):
    """One to three fingers that reach from outside to about the rim of the leaf: colours and cover."""
    n = len(reach)
    tone = rand(n).view(-1, 1, 1, 1)
    dark, fair = (torch.tensor(c, device=DEV).view(1, 3, 1, 1) for c in ([0.30, 0.19, 0.14], [0.90, 0.70, 0.60]))
    skin = (dark + (fair - dark) * tone) * torch.exp(torch.randn(n, 3, 1, 1, device=DEV) * 0.07)
    way = rand(n, 0, 2 * math.pi)
    thick = rand(n, 5, 13)
    p = torch.arange(SIDE, device=DEV) + 0.5
    gy, gx = torch.meshgrid(p, p, indexing="ij")
    v = lambda t: t.view(-1, 1, 1)
    rgb, cover = torch.zeros(n, 3, SIDE, SIDE, device=DEV), torch.zeros(n, SIDE, SIDE, device=DEV)
    far, grain = rand(n, 0.25, 0.75) * reach, 0.9 + 0.2 * soft_noise(n, 12)
    for k in range(3):
        there = torch.ones(n, device=DEV) if k == 0 else (rand(n) < 0.5).float()
        aside, tip, lean = (k - 1) * 2.0 * thick if k else torch.zeros(n, device=DEV), far + (rand(n, 0, 14) if k else 0), way + rand(n, -0.12, 0.12)
        dx, dy = gx - v(middle[:, 0]), gy - v(middle[:, 1])
        along = dx * v(lean.cos()) + dy * v(lean.sin()) - v(tip)
        across = -dx * v(lean.sin()) + dy * v(lean.cos()) - v(aside)
        d = (across ** 2 + along.clamp(max=0) ** 2).sqrt() / v(thick)
        c = torch.sigmoid((1 - d) * v(thick) * 1.5) * v(there)
        colour = skin * (1.08 - 0.45 * d.clamp(max=1.2) ** 2)[:, None] * grain
        nail = torch.sigmoid((0.5 - ((across / v(thick)) ** 2 + ((along / v(thick) - 0.15) / 1.3) ** 2).sqrt()) * 12) * v((rand(n) < 0.5).float())
        paint = torch.where((rand(n) < 0.1).view(-1, 1, 1, 1), torch.rand(n, 3, 1, 1, device=DEV), (skin * 1.25 + 0.06).clamp(max=1))
        colour = colour * (1 - nail[:, None]) + paint * nail[:, None]
        rgb = rgb * (1 - c[:, None]) + colour * c[:, None]
        cover = torch.maximum(cover, c)
    return rgb.clamp(0, 1), cover


def lay_fingers(rgb, mask, share):
    """Fingers over some pictures; what they cover of the leaf is no longer to be found."""
    n = len(rgb)
    p = torch.arange(SIDE, device=DEV) + 0.5
    area = mask.sum((1, 2)).clamp(min=1)
    middle = torch.stack([(mask * p.view(1, 1, -1)).sum((1, 2)), (mask * p.view(1, -1, 1)).sum((1, 2))], 1) / area[:, None]
    top, cover = fingers(middle, area.sqrt())
    left = (mask * (1 - cover)).sum((1, 2)) > 0.6 * area
    cover = cover * ((rand(n) < share) & left).view(-1, 1, 1)
    return over(rgb, top, cover), mask * (1 - cover)


def soft_noise(n, cells):
    return F.interpolate(torch.rand(n, 1, cells, cells, device=DEV), size=(SIDE, SIDE), mode="bicubic", align_corners=False)


def shade(rgb):
    """Shadow edges across the scene."""
    n = len(rgb)
    p = torch.linspace(-1, 1, SIDE, device=DEV)
    gy, gx = torch.meshgrid(p, p, indexing="ij")
    a = rand(n, 0, 6.283).view(-1, 1, 1)
    line = gx * a.cos() + gy * a.sin() + rand(n, -0.7, 0.7).view(-1, 1, 1) + 0.5 * (soft_noise(n, 5)[:, 0] - 0.5)
    dark = torch.sigmoid(line * rand(n, 6, 60).view(-1, 1, 1)) * rand(n, 0, 0.65).view(-1, 1, 1) * (rand(n) < 0.35).view(-1, 1, 1)
    return rgb * (1 - dark[:, None])


def blur(rgb, sigma):
    k = torch.arange(-6, 7, device=DEV).float()
    k = torch.exp(-k ** 2 / (2 * sigma ** 2)); k = k / k.sum()
    c = rgb.shape[1]
    rgb = F.conv2d(F.pad(rgb, (6, 6, 0, 0), mode="reflect"), k.view(1, 1, 1, -1).repeat(c, 1, 1, 1), groups=c)
    return F.conv2d(F.pad(rgb, (0, 0, 6, 6), mode="reflect"), k.view(1, 1, -1, 1).repeat(c, 1, 1, 1), groups=c)


def over(base, top, cover):
    cover = cover[:, None]
    strength = rand(len(base), -0.3, 0.5).clamp(min=0)
    drop = F.max_pool2d(blur(cover, 2.5), 5, 1, 2) * strength.view(-1, 1, 1, 1)
    return base * (1 - drop * (1 - cover)) * (1 - cover) + top * cover


def tap_map(spots, keep):
    """Bell of 6 px round each spot; (n,2) and (n,)."""
    p = torch.arange(SIDE, device=DEV) + 0.5
    d = (p.view(1, 1, -1) - spots[:, 0].view(-1, 1, 1)) ** 2 + (p.view(1, -1, 1) - spots[:, 1].view(-1, 1, 1)) ** 2
    return torch.exp(-d / (2 * 36.0)) * keep.view(-1, 1, 1).float()


def draw_spot(weight):
    flat = weight.flatten(1) + 1e-9
    at = torch.multinomial(flat, 1)[:, 0]
    return torch.stack([at % SIDE + 0.5, at // SIDE + 0.5], 1).float()


def make_batch(data, n, good_idx, all_idx, boxes, natural_share):
    images, masks, sizes, axis = data
    pick = lambda pool, k: pool[torch.randint(len(pool), (k,), device=DEV)]
    real = int(n * natural_share)
    rgb1, mask1 = crop(images, masks, sizes, pick(good_idx, real), 0.6)
    made = n - real
    ground = pick(all_idx, made)
    rgb2, _ = crop(images, masks, sizes, ground, 0.35)
    rgb2 = tint(rgb2, 1.0)
    soft = rand(made) < 0.3
    rgb2 = torch.where(soft.view(-1, 1, 1, 1), blur(rgb2, 2.5), rgb2)
    own = pick(good_idx, made)
    # Half are leaflets of one stalk: the same leaf, of one colour, side by side; the others lie anyhow.
    kin = rand(made) < 0.5
    spot = place(made, 0.2, 0.35, 1.15)
    way = rand(made, 0, 2 * math.pi)
    straight = axis[own] - way + rand(made, -0.3, 0.3) + torch.where(rand(made) < 0.5, 0.0, math.pi)
    spot = (spot[0], torch.where(kin, spot[1].clamp(max=0.85 * SIDE), spot[1]), torch.where(kin, straight, spot[2]))

    def neighbour(spread):
        """Another leaf, and whether it is of the same stalk."""
        other = torch.where(kin | (rand(made) < 0.6), own, pick(good_idx, made))
        free = place(made, spread, 0.35, 1.15)
        middle, size, turned = beside(spot, way)
        turn = axis[other] - turned + rand(made, -0.3, 0.3) + torch.where(rand(made) < 0.5, 0.0, math.pi)
        at = (torch.where(kin[:, None], middle, free[0]), torch.where(kin, size, free[1]), torch.where(kin, turn, free[2]))
        top, cover = paste(images, masks, sizes, other, boxes, at)
        like = (top * torch.exp(torch.randn(made, 1, 1, 1, device=DEV) * 0.07)).clamp(0, 1)
        return torch.where(kin.view(-1, 1, 1, 1), like, tint_some(top, 0.6)), cover

    for _ in range(2):  # beneath it
        top, cover = neighbour(0.6)
        rgb2 = over(rgb2, top, cover * (rand(made) < 0.6).view(-1, 1, 1))
    top, cover = fingers(spot[0], spot[1] * 0.8)
    rgb2 = over(rgb2, top, cover * (rand(made) < 0.15).view(-1, 1, 1))
    top, mask2 = paste(images, masks, sizes, own, boxes, spot)
    top = torch.where(kin.view(-1, 1, 1, 1), top, tint_some(top, 0.7))
    rgb2 = over(rgb2, top, mask2)
    top, cover = neighbour(0.75)
    cover = cover * (rand(made) < torch.where(kin, 0.5, 0.3)).view(-1, 1, 1)
    covered = mask2 * (1 - cover)
    enough = covered.sum((1, 2)) > 0.55 * mask2.sum((1, 2))
    cover = cover * enough.view(-1, 1, 1)
    rgb2 = over(rgb2, top, cover)
    mask2 = mask2 * (1 - cover)
    rgb2, mask2 = lay_fingers(rgb2, mask2, 0.15)
    rgb1, mask1 = lay_fingers(rgb1, mask1, 0.08)
    rgb = torch.cat([rgb1, rgb2]); mask = torch.cat([mask1, mask2])
    rgb = tint(rgb, 0.8)
    _, cover = paste(images, masks, sizes, pick(good_idx, n), boxes, place(n, 0.6, 0.3, 1.2))  # shadow of another leaf
    rgb = rgb * (1 - blur(cover[:, None], 1.0) * (rand(n, 0.25, 0.65) * (rand(n) < 0.2)).view(-1, 1, 1, 1))
    rgb = shade(rgb)
    out_of_focus = rand(n) < 0.2
    rgb = torch.where(out_of_focus.view(-1, 1, 1, 1), blur(rgb, 1.0), rgb)
    rgb = (rgb + torch.randn_like(rgb) * 0.012).clamp(0, 1)
    inner = -widen(-mask, 9)
    inner = torch.where((inner.sum((1, 2)) > 5).view(-1, 1, 1), inner, mask)
    p = torch.arange(SIDE, device=DEV) - SIDE / 2 + 0.5
    central = torch.exp(-(p.view(1, 1, -1) ** 2 + p.view(1, -1, 1) ** 2) / (2 * 22.0 ** 2))
    central = torch.where((rand(n) < 0.6).view(-1, 1, 1), central, torch.ones_like(central))
    lab = to_lab(rgb)
    # A finger misses now and then: some taps lie beside the leaf, on what is not green.
    missed = (1 - widen(mask, 5)) * widen(mask, 23) * (lab[:, 1] > 2)
    astray = (rand(n) < 0.1) & (missed.sum((1, 2)) > 20)
    yes = tap_map(draw_spot(torch.where(astray.view(-1, 1, 1), missed, inner * central)), torch.ones(n, device=DEV))
    more = tap_map(draw_spot(inner), rand(n) < 0.15)
    outer = 1 - widen(mask, 9)
    near = outer * widen(mask, 41)
    no = tap_map(draw_spot(near), rand(n) < 0.2)
    x = torch.cat([lab[:, :1] / 50 - 1, lab[:, 1:] / 40, torch.maximum(yes, more)[:, None], no[:, None]], 1)
    keep = (mask > 0.5).sum((1, 2)) > 0.01 * SIDE * SIDE
    return x, mask, keep


def fold(conv):
    """Weights and bias with the batch norm taken in."""
    norm = conv.norm
    factor = norm.weight / torch.sqrt(norm.running_var + norm.eps)
    return conv.conv.weight * factor.view(-1, 1, 1, 1), norm.bias - norm.running_mean * factor


def export(net, folder):
    net = net.eval().float()
    layers, order = [], []

    def add(name, weight, bias):
        w = weight.detach().cpu().numpy().reshape(weight.shape[0], -1)
        scale = np.maximum(np.abs(w).max(1), 1e-8) / 127
        whole = np.clip(np.round(w / scale[:, None]), -127, 127).astype(np.int8)
        layers.append({"name": name, "shape": list(weight.shape), "scale": [float(f"{s:.6g}") for s in scale],
                       "bias": [float(f"{b:.6g}") for b in bias.detach().cpu().numpy()]})
        order.append(whole.tobytes())
        return torch.from_numpy((whole * np.array(layers[-1]["scale"], np.float32)[:, None]).astype(np.float32)).reshape(weight.shape), torch.tensor(layers[-1]["bias"], dtype=torch.float32)

    for name, module in net.named_modules():
        if isinstance(module, Conv):
            w, b = add(name, *fold(module))
            module.conv = nn.Conv2d(module.conv.in_channels, module.conv.out_channels, module.conv.kernel_size, module.conv.stride, module.conv.padding, groups=module.conv.groups).to(DEV)
            module.conv.weight.data, module.conv.bias.data = w.to(DEV), b.to(DEV)
            module.norm = nn.Identity()
        elif name in ("context", "out"):
            w, b = add(name, module.weight, module.bias)
            module.weight.data, module.bias.data = w.to(DEV), b.to(DEV)
    json.dump({"layers": layers, "weights": base64.b64encode(b"".join(order)).decode()}, open(f"{folder}/outline-network.json", "w"))
    return net


def main():
    args = argparse.ArgumentParser()
    args.add_argument("--data"); args.add_argument("--to"); args.add_argument("--minutes", type=float, default=8); args.add_argument("--batch", type=int, default=192)
    args.add_argument("--from", dest="start"); args.add_argument("--rate", type=float, default=3e-3)
    args = args.parse_args()
    torch.manual_seed(1); torch.backends.cudnn.benchmark = True
    images, masks, sizes, good, rows = load(args.data)
    print(len(images), "photographs,", int(good.sum()), "outlines kept")
    boxes = torch.zeros(len(masks), 4, device=DEV)
    for i in range(len(masks)):
        ys, xs = torch.nonzero(masks[i] > 127, as_tuple=True)
        if len(xs) > 0: boxes[i] = torch.stack([xs.min(), ys.min(), xs.max(), ys.max()]).float()
    axis = torch.zeros(len(masks), device=DEV)  # along which the leaf is longest
    for i in range(len(masks)):
        ys, xs = torch.nonzero(masks[i] > 127, as_tuple=True)
        if len(xs) < 9: continue
        x, y = xs.float() - xs.float().mean(), ys.float() - ys.float().mean()
        axis[i] = 0.5 * torch.atan2(2 * (x * y).mean(), (x * x).mean() - (y * y).mean())
    number = torch.arange(len(images), device=DEV)
    hold = torch.tensor([hash_of(r["group"]) % 10 == 0 for r in rows], device=DEV)
    # The field sets count for more: they are what the network is for.
    weight = torch.tensor([6 if r["drawn"] else 1 if r["set"] in ("papaya-spad", "soybean-holes") else 3 for r in rows], device=DEV)
    repeat = lambda which: torch.repeat_interleave(number[which], weight[which])
    train_good, train_all = repeat(good & ~hold), repeat(~hold)
    field = torch.tensor([r["set"] not in ("papaya-spad", "soybean-holes") for r in rows], device=DEV)
    test_good, test_all = number[good & hold & field], number[hold & field]
    by_hand = torch.tensor([r["drawn"] for r in rows], device=DEV)
    test_drawn = number[good & hold & by_hand]
    data = (images, masks, sizes, axis)
    net = OutlineNetwork().to(DEV).to(memory_format=torch.channels_last)
    print(sum(p.numel() for p in net.parameters()), "weights")
    net = quickest(net, args.batch)
    if args.start: net.load_state_dict(torch.load(args.start, map_location=DEV))
    best = torch.optim.swa_utils.AveragedModel(net, multi_avg_fn=torch.optim.swa_utils.get_ema_multi_avg_fn(0.999), use_buffers=True)
    opt = torch.optim.AdamW(net.parameters(), 3e-3, weight_decay=0.02)
    start, step, limit = time.time(), 0, args.minutes * 60
    while (spent := time.time() - start) < limit:
        part = spent / limit
        for g in opt.param_groups: g["lr"] = args.rate * min(1, (step + 1) / 300) * (0.5 + 0.5 * math.cos(math.pi * part)) + 1e-6
        with torch.no_grad(): x, y, keep = make_batch(data, args.batch, train_good, train_all, boxes, 0.5)
        x = x.to(memory_format=net.order)
        with torch.autocast(DEV, torch.bfloat16): z = net(x)
        z = z.float()
        p = torch.sigmoid(z)
        bce = F.binary_cross_entropy_with_logits(z, y, reduction="none")
        near = widen(y, 7) + widen(-y, 7)
        bce = (bce * (1 + 2 * near)).mean((1, 2))
        dice = 1 - (2 * (p * y).sum((1, 2)) + 1) / (p.sum((1, 2)) + y.sum((1, 2)) + 1)
        loss = ((bce + dice) * keep).sum() / keep.sum()
        opt.zero_grad(set_to_none=True); loss.backward()
        nn.utils.clip_grad_norm_(net.parameters(), 1.0); opt.step(); best.update_parameters(net)
        step += 1
        if step == 100: print(f"100 steps, {time.time() - start:.0f} s", flush=True)
        if step % 500 == 0:
            print(f"{step} steps, {spent:.0f} s, loss {loss.item():.3f}, held-out overlap natural {check(best, data, test_good, test_all, boxes, 1.0):.3f}, composed {check(best, data, test_good, test_all, boxes, 0.0):.3f}, drawn {check(best, data, test_drawn, test_all, boxes, 1.0):.3f}", flush=True)
    settle(best.module, data, args.batch, train_good, train_all, boxes)
    torch.save(best.module.state_dict(), f"{args.to}/network.pt")
    final = export(best.module, args.to)
    review(final, data, number[good & field], rows, args.to)
    print(f"as whole numbers: natural {check(final, data, test_good, test_all, boxes, 1.0):.3f}, composed {check(final, data, test_good, test_all, boxes, 0.0):.3f}, drawn {check(final, data, test_drawn, test_all, boxes, 1.0):.3f}")
    torch.manual_seed(5)
    x, y, _ = make_batch(data, 2, test_good, test_all, boxes, 0.5)
    small = F.interpolate(x[:1], size=(32, 48), mode="bilinear")
    with torch.no_grad(): z = final(small)
    json.dump({"width": 48, "height": 32, "input": [round(v, 4) for v in small[0].flatten().tolist()], "output": [round(v, 3) for v in z[0].flatten().tolist()]}, open(f"{args.to}/check.json", "w"))


def quickest(net, n):
    """The network in the order of memory in which it learns faster on this card."""
    took = {}
    for order in (torch.channels_last, torch.contiguous_format):
        net = net.to(memory_format=order)
        x = torch.randn(n, 5, SIDE, SIDE, device=DEV).to(memory_format=order)
        for k in range(12):
            if k == 4:
                if DEV == "cuda": torch.cuda.synchronize()
                start = time.time()
            with torch.autocast(DEV, torch.bfloat16): net(x).float().mean().backward()
            net.zero_grad(set_to_none=True)
        if DEV == "cuda": torch.cuda.synchronize()
        took[order] = (time.time() - start) / 8
    print({str(k): f"{1000 * v:.0f} ms" for k, v in took.items()}, flush=True)
    net.order = min(took, key=took.get)
    return net.to(memory_format=net.order)


def hash_of(text):
    value = 2166136261
    for c in text.encode(): value = ((value ^ c) * 16777619) & 0xFFFFFFFF
    return value


@torch.no_grad()
def settle(net, data, n, good, all_idx, boxes):
    """Means and spreads of every layer taken anew: those averaged along the way do not belong to the averaged weights."""
    for m in net.modules():
        if isinstance(m, nn.BatchNorm2d): m.reset_running_stats(); m.momentum = None
    net.train()
    for _ in range(60): net(make_batch(data, n, good, all_idx, boxes, 0.5)[0])
    net.eval()


@torch.no_grad()
def review(net, data, which, rows, folder, most=72):
    """Sheet of the outlines that the network disagrees with most under a tap in their middle: red as kept, blue as guessed."""
    images, masks, sizes, _ = data
    net.eval()
    found = []
    for i in which.tolist():
        w, h = (int(v) for v in sizes[i])
        shrink = SIDE / math.sqrt(w * h)
        gw, gh = (max(16, 16 * round(v * shrink / 16)) for v in (w, h))
        cut = lambda t: F.interpolate(t[None, ..., :h, :w].float(), size=(gh, gw), mode="area")
        lab, mask = to_lab(cut(images[i]) / 255), cut(masks[i][None])[0, 0] / 255
        inner = -F.max_pool2d(-mask[None, None], 9, 1, 4)[0, 0]
        py, px = torch.arange(gh, device=DEV) + 0.5, torch.arange(gw, device=DEV) + 0.5
        far = (py[:, None] - gh / 2) ** 2 + (px - gw / 2) ** 2
        at = int((far + 1e6 * (inner < 0.5)).flatten().argmin())
        tap = torch.exp(-((py[:, None] - at // gw - 0.5) ** 2 + (px - at % gw - 0.5) ** 2) / 72)
        z = net(torch.cat([lab[:, :1] / 50 - 1, lab[:, 1:] / 40, tap[None, None], torch.zeros_like(tap)[None, None]], 1))[0] > 0
        t = mask > 0.5
        found.append((float((z & t).sum() / (z | t).sum().clamp(min=1)), i, z))
    found.sort(key=lambda f: f[0])
    with open(f"{folder}/review.txt", "w") as f:
        f.writelines(f"{iou:.3f} {rows[i]['id']}{' drawn' if rows[i]['drawn'] else ''}\n" for iou, i, _ in found)
    tiles = []
    for k, (iou, i, z) in enumerate(found[:most]):
        w, h = (int(v) for v in sizes[i])
        picture = np.full((SOURCE, SOURCE, 3), 255, np.uint8)
        picture[:h, :w] = images[i, :, :h, :w].permute(1, 2, 0).cpu().numpy()[:, :, ::-1]
        guess = cv2.resize(z.cpu().numpy().astype(np.uint8), (w, h), interpolation=cv2.INTER_LINEAR)
        for mask, colour in ((guess, (255, 80, 0)), ((masks[i, :h, :w] > 127).cpu().numpy().astype(np.uint8), (0, 0, 255))):
            cv2.drawContours(picture, cv2.findContours(mask, cv2.RETR_EXTERNAL, cv2.CHAIN_APPROX_NONE)[0], -1, colour, 1)
        cv2.putText(picture, f"{k} {iou:.2f}", (2, 252), 0, 0.5, (0, 0, 0), 3); cv2.putText(picture, f"{k} {iou:.2f}", (2, 252), 0, 0.5, (255, 255, 255), 1)
        tiles.append(cv2.resize(picture, (200, 200), interpolation=cv2.INTER_AREA))
    for start in range(0, len(tiles), 36):
        page = tiles[start:start + 36]; page += [np.full((200, 200, 3), 255, np.uint8)] * (36 - len(page))
        cv2.imwrite(f"{folder}/review-{start // 36}.png", np.vstack([np.hstack(page[r * 6:r * 6 + 6]) for r in range(6)]))


@torch.no_grad()
def check(net, data, good, all_idx, boxes, natural):
    """Mean overlap over union on held-out photographs."""
    state = torch.get_rng_state(), torch.cuda.get_rng_state() if DEV == "cuda" else None
    torch.manual_seed(9)
    net.eval()
    total, count = 0.0, 0
    for _ in range(3):
        x, y, keep = make_batch(data, 256, good, all_idx, boxes, natural)
        z = net(x) > 0
        t = y > 0.5
        iou = (z & t).sum((1, 2)) / (z | t).sum((1, 2)).clamp(min=1)
        total += iou[keep].sum().item(); count += int(keep.sum())
    net.train()
    torch.set_rng_state(state[0])
    if DEV == "cuda": torch.cuda.set_rng_state(state[1])
    return total / count


if __name__ == "__main__":
    main()

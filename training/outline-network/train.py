"""Trains the small network that guesses, from a coarse picture and a tap, which pixels are the tapped leaf.

Run where PyTorch and a GPU are at hand:

    python3 train.py --data FOLDER --to OUT --minutes 8

FOLDER holds `index.jsonl` (id, accepted), and for each id `id.jpg` (longest side 256 px) and `id.png` (outline, 255 = leaf),
as `label-outlines.ts` writes them; OUT receives `outline-network.json` (weights as whole numbers with a scale for each
output channel) and `check.json` (an input and what the network makes of it, for the test of the port).

Nobody drew masks for the field photographs. The outlines come from the camera's own cuts, looked through by eye and only the
good ones kept; hard scenes are then made by laying leaves over other photographs (copy and paste; Ghiasi et al. 2021,
"Simple copy-paste is a strong data augmentation method for instance segmentation"), where the truth is known.
"""
import argparse, base64, json, math, time
import cv2, numpy as np, torch, torch.nn as nn, torch.nn.functional as F

SIDE = 128
SOURCE = 256
DEV = "cuda"


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
        self.d4, self.e4 = Down(96, 128), rep(128, 4)
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


def load(folder):
    images, masks, sizes, good, ids = [], [], [], [], []
    for line in open(f"{folder}/index.jsonl"):
        row = json.loads(line)
        image = cv2.imread(f"{folder}/{row['id']}.jpg")[:, :, ::-1]
        mask = cv2.imread(f"{folder}/{row['id']}.png", 0)
        h, w = mask.shape
        canvas = np.zeros((SOURCE, SOURCE, 3), np.uint8); canvas[:h, :w] = image
        flat = np.zeros((SOURCE, SOURCE), np.uint8); flat[:h, :w] = mask
        images.append(canvas); masks.append(flat); sizes.append((w, h)); good.append(row["accepted"]); ids.append(row)
    return (torch.from_numpy(np.stack(images)).to(DEV).permute(0, 3, 1, 2).contiguous(), torch.from_numpy(np.stack(masks)).to(DEV),
            torch.tensor(sizes, dtype=torch.float32, device=DEV), torch.tensor(good, device=DEV), ids)


def rand(n, lo=0.0, hi=1.0):
    return torch.rand(n, device=DEV) * (hi - lo) + lo


def crop(images, masks, sizes, idx, least):
    """A cut of each picture, turned by quarters and mirrored, at SIDE x SIDE."""
    n = len(idx)
    w, h = sizes[idx, 0], sizes[idx, 1]
    scale = rand(n, least, 1.0)
    cw, ch = w * (scale * rand(n, 0.85, 1.0)).clamp(max=1), h * scale
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


def paste(images, masks, sizes, idx, boxes, spread):
    """Leaves cut out of their photographs, turned anyhow, at SIDE x SIDE: colours and cover."""
    n = len(idx)
    size = (boxes[idx, 2:] - boxes[idx, :2]).max(1).values
    mid = (boxes[idx, 2:] + boxes[idx, :2]) / 2
    want = rand(n, 0.35, 1.15) * SIDE
    angle = rand(n, 0, 2 * math.pi)
    cx, cy = SIDE / 2 + rand(n, -spread, spread) * SIDE, SIDE / 2 + rand(n, -spread, spread) * SIDE
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
    images, masks, sizes = data
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
    for _ in range(2):  # others beneath it, often of the very same leaf
        other = torch.where(rand(made) < 0.6, own, pick(good_idx, made))
        top, cover = paste(images, masks, sizes, other, boxes, 0.6)
        cover = cover * (rand(made) < 0.6).view(-1, 1, 1)
        rgb2 = over(rgb2, tint_some(top, 0.6), cover)
    top, mask2 = paste(images, masks, sizes, own, boxes, 0.2)
    rgb2 = over(rgb2, tint_some(top, 0.7), mask2)
    other = torch.where(rand(made) < 0.6, own, pick(good_idx, made))
    top, cover = paste(images, masks, sizes, other, boxes, 0.75)
    cover = cover * (rand(made) < 0.3).view(-1, 1, 1)
    covered = mask2 * (1 - cover)
    enough = covered.sum((1, 2)) > 0.55 * mask2.sum((1, 2))
    cover = cover * enough.view(-1, 1, 1)
    rgb2 = over(rgb2, tint_some(top, 0.6), cover)
    mask2 = mask2 * (1 - cover)
    rgb = torch.cat([rgb1, rgb2]); mask = torch.cat([mask1, mask2])
    rgb = shade(tint(rgb, 0.8))
    out_of_focus = rand(n) < 0.2
    rgb = torch.where(out_of_focus.view(-1, 1, 1, 1), blur(rgb, 1.0), rgb)
    rgb = (rgb + torch.randn_like(rgb) * 0.012).clamp(0, 1)
    inner = -F.max_pool2d(-mask[:, None], 9, 1, 4)[:, 0]
    inner = torch.where((inner.sum((1, 2)) > 5).view(-1, 1, 1), inner, mask)
    p = torch.arange(SIDE, device=DEV) - SIDE / 2 + 0.5
    central = torch.exp(-(p.view(1, 1, -1) ** 2 + p.view(1, -1, 1) ** 2) / (2 * 22.0 ** 2))
    central = torch.where((rand(n) < 0.6).view(-1, 1, 1), central, torch.ones_like(central))
    yes = tap_map(draw_spot(inner * central), torch.ones(n, device=DEV))
    more = tap_map(draw_spot(inner), rand(n) < 0.15)
    outer = 1 - F.max_pool2d(mask[:, None], 9, 1, 4)[:, 0]
    near = outer * F.max_pool2d(mask[:, None], 41, 1, 20)[:, 0]
    no = tap_map(draw_spot(near), rand(n) < 0.2)
    lab = to_lab(rgb)
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
    args = args.parse_args()
    torch.manual_seed(1); torch.backends.cudnn.benchmark = True
    images, masks, sizes, good, rows = load(args.data)
    print(len(images), "photographs,", int(good.sum()), "outlines kept")
    boxes = torch.zeros(len(masks), 4, device=DEV)
    for i in range(len(masks)):
        ys, xs = torch.nonzero(masks[i] > 127, as_tuple=True)
        if len(xs) > 0: boxes[i] = torch.stack([xs.min(), ys.min(), xs.max(), ys.max()]).float()
    number = torch.arange(len(images), device=DEV)
    hold = torch.tensor([hash_of(r["group"]) % 10 == 0 for r in rows], device=DEV)
    # The field sets count for more: they are what the network is for.
    weight = torch.tensor([1 if r["set"] in ("papaya-spad", "soybean-holes") else 3 for r in rows], device=DEV)
    repeat = lambda which: torch.repeat_interleave(number[which], weight[which])
    train_good, train_all = repeat(good & ~hold), repeat(~hold)
    field = torch.tensor([r["set"] not in ("papaya-spad", "soybean-holes") for r in rows], device=DEV)
    test_good, test_all = number[good & hold & field], number[hold & field]
    data = (images, masks, sizes)
    net = OutlineNetwork().to(DEV).to(memory_format=torch.channels_last)
    print(sum(p.numel() for p in net.parameters()), "weights")
    best = torch.optim.swa_utils.AveragedModel(net, multi_avg_fn=torch.optim.swa_utils.get_ema_multi_avg_fn(0.999), use_buffers=True)
    opt = torch.optim.AdamW(net.parameters(), 3e-3, weight_decay=0.02)
    start, step, limit = time.time(), 0, args.minutes * 60
    while (spent := time.time() - start) < limit:
        part = spent / limit
        for g in opt.param_groups: g["lr"] = 3e-3 * min(1, (step + 1) / 300) * (0.5 + 0.5 * math.cos(math.pi * part)) + 1e-6
        with torch.no_grad(): x, y, keep = make_batch(data, args.batch, train_good, train_all, boxes, 0.4)
        x = x.to(memory_format=torch.channels_last)
        with torch.autocast("cuda", torch.bfloat16): z = net(x)
        z = z.float()
        p = torch.sigmoid(z)
        bce = F.binary_cross_entropy_with_logits(z, y, reduction="none")
        near = F.max_pool2d(y[:, None], 7, 1, 3)[:, 0] + F.max_pool2d(-y[:, None], 7, 1, 3)[:, 0]
        bce = (bce * (1 + 2 * near)).mean((1, 2))
        dice = 1 - (2 * (p * y).sum((1, 2)) + 1) / (p.sum((1, 2)) + y.sum((1, 2)) + 1)
        loss = ((bce + dice) * keep).sum() / keep.sum()
        opt.zero_grad(set_to_none=True); loss.backward()
        nn.utils.clip_grad_norm_(net.parameters(), 1.0); opt.step(); best.update_parameters(net)
        step += 1
        if step % 500 == 0:
            print(f"{step} steps, {spent:.0f} s, loss {loss.item():.3f}, held-out overlap natural {check(best, data, test_good, test_all, boxes, 1.0):.3f}, composed {check(best, data, test_good, test_all, boxes, 0.0):.3f}", flush=True)
    final = export(best.module, args.to)
    print(f"as whole numbers: natural {check(final, data, test_good, test_all, boxes, 1.0):.3f}, composed {check(final, data, test_good, test_all, boxes, 0.0):.3f}")
    torch.manual_seed(5)
    x, y, _ = make_batch(data, 2, test_good, test_all, boxes, 0.5)
    small = F.interpolate(x[:1], size=(32, 48), mode="bilinear")
    with torch.no_grad(): z = final(small)
    json.dump({"width": 48, "height": 32, "input": [round(v, 4) for v in small[0].flatten().tolist()], "output": [round(v, 3) for v in z[0].flatten().tolist()]}, open(f"{args.to}/check.json", "w"))


def hash_of(text):
    value = 2166136261
    for c in text.encode(): value = ((value ^ c) * 16777619) & 0xFFFFFFFF
    return value


@torch.no_grad()
def check(net, data, good, all_idx, boxes, natural):
    """Mean overlap over union on held-out photographs."""
    state = torch.get_rng_state(), torch.cuda.get_rng_state()
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
    torch.set_rng_state(state[0]); torch.cuda.set_rng_state(state[1])
    return total / count


if __name__ == "__main__":
    main()

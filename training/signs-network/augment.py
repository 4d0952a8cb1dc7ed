"""What varies between photographs and says nothing of a leaf: pose, light, camera, and the ground, which is taken from other
photographs so that the place cannot be learnt. Everything happens in batches on the graphics card."""
import math
import torch, torch.nn.functional as F
from paint import colours, grain, uniform


def turn(x, fill):
    """Turned, mirrored, scaled, sheared and moved; `x` is (n, 4, side, side), its last channel the leaf."""
    n, device = len(x), x.device
    angle = torch.rand(n, device=device) * 2 * math.pi
    scale = torch.exp(torch.empty(n, device=device).uniform_(-0.12, 0.3))
    stretch = torch.exp(torch.empty(n, device=device).uniform_(-0.12, 0.12))
    mirror = torch.where(torch.rand(n, device=device) < 0.5, -1.0, 1.0)
    cos, sin = angle.cos() * scale, angle.sin() * scale
    shift = torch.empty(2, n, device=device).uniform_(-0.06, 0.06)
    theta = torch.stack([torch.stack([cos * mirror * stretch, -sin / stretch, shift[0]], 1), torch.stack([sin * mirror * stretch, cos / stretch, shift[1]], 1)], 1)
    grid = F.affine_grid(theta, list(x.shape), align_corners=False)
    moved = F.grid_sample(x, grid, mode="bilinear", padding_mode="zeros", align_corners=False)
    return moved + fill * (1 - F.grid_sample(torch.ones_like(x[:, :1]), grid, align_corners=False)) * (torch.arange(4, device=device) < 3).view(1, 4, 1, 1)


def wobble(leaf):
    """The outline as a camera might have found it: too wide or too narrow here and there, a piece lost, a neighbour taken along."""
    n, side, device = len(leaf), leaf.shape[-1], leaf.device
    out = leaf.clone()
    dice = torch.rand(n, device=device)
    for k, change in enumerate((lambda m: F.max_pool2d(m, 5, 1, 2), lambda m: -F.max_pool2d(-m, 5, 1, 2), lambda m: -F.max_pool2d(-m, 9, 1, 4))):
        here = ((dice >= 0.08 * k) & (dice < 0.08 * (k + 1))).nonzero()[:, 0]
        if len(here): out[here] = change(leaf[here])
    lost = ((dice > 0.88)).nonzero()[:, 0]
    if len(lost):
        slope = torch.randn(len(lost), 2, 1, 1, device=device)
        at = torch.linspace(-1, 1, side, device=device)
        side_of = slope[:, :1] * at.view(1, 1, 1, -1) + slope[:, 1:] * at.view(1, 1, -1, 1)
        out[lost] = out[lost] * (side_of < slope.norm(dim=1, keepdim=True) * uniform(len(lost), 0.15, 0.7, device)).float()
    return out


def new_ground(rgb, leaf, grounds):
    """Another ground behind most of the leaves: another photograph, plain, or noise."""
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    other = grounds[torch.randint(len(grounds), (n,), device=device)].float() / 255
    kind = torch.rand(n, 1, 1, 1, device=device)
    plain = colours(n, [0.05, 0.05, 0.05], [0.98, 0.98, 0.98], device) + 0.15 * torch.rand(n, 1, 1, 1, device=device) * grain(n, side, 28, device)
    behind = torch.where(kind < 0.4, other, torch.where(kind < 0.75, plain.clamp(0, 1), rgb))
    return rgb * leaf + behind * (1 - leaf)


def relight(rgb):
    """Exposure, cast of colour, contrast, strength of colour, shade falling over a part."""
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    linear = rgb.clamp(0, 1) ** 2.2
    gain = torch.exp(uniform(n, -0.8, 0.7, device)) * torch.exp(torch.randn(n, 3, 1, 1, device=device) * 0.13)
    shade = 1 - uniform(n, 0, 0.6, device) * (torch.rand(n, 1, 1, 1, device=device) < 0.3) * torch.sigmoid(3 * grain(n, side, 3, device))
    rgb = (linear * gain * shade).clamp(1e-5, 1.6) ** (1 / 2.2)
    grey = rgb.mean(1, keepdim=True)
    rgb = grey + (rgb - grey) * uniform(n, 0.55, 1.35, device)
    return ((rgb - 0.5) * uniform(n, 0.75, 1.25, device) + 0.5 + uniform(n, -0.08, 0.08, device)).clamp(0, 1)


def soften(rgb):
    """Blur of three widths, or sharpening as phones do."""
    n, device = len(rgb), rgb.device
    dice, out = torch.rand(n, device=device), rgb.clone()
    for k, width in enumerate((0.7, 1.1, 1.6)):
        here = ((dice >= 0.12 * k) & (dice < 0.12 * (k + 1))).nonzero()[:, 0]
        if len(here) == 0: continue
        at = torch.arange(-4, 5, device=device).float()
        bell = torch.exp(-at * at / (2 * width * width)); bell = bell / bell.sum()
        part = rgb[here].flatten(0, 1)[:, None]
        part = F.conv2d(F.pad(part, (4, 4, 4, 4), mode="reflect"), bell.view(1, 1, 1, -1))
        out[here] = F.conv2d(part, bell.view(1, 1, -1, 1))[:, 0].view(len(here), 3, *rgb.shape[2:])
    crisp = (dice > 0.85).nonzero()[:, 0]
    if len(crisp): out[crisp] = (rgb[crisp] + uniform(len(crisp), 0.3, 1, device) * (rgb[crisp] - F.avg_pool2d(rgb[crisp], 3, 1, 1))).clamp(0, 1)
    return out


def cosines(device):
    """The 8 x 8 discrete cosine transform of JPEG (ITU-T T.81)."""
    k = torch.arange(8, device=device).float()
    rows = torch.cos((2 * k[None] + 1) * k[:, None] * math.pi / 16) * 0.5
    rows[0] /= math.sqrt(2)
    return rows


def compress(rgb):
    """What JPEG loses: coefficients of each block rounded, more coarsely the finer they are."""
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    d = cosines(device)
    step = 0.004 + uniform(n, 0, 1, device)[..., None, None] ** 3 * 0.04
    f = torch.arange(8, device=device).float()
    step = step * (1 + 0.6 * (f[:, None] + f[None])).view(1, 1, 1, 1, 8, 8)
    blocks = rgb.view(n, 3, side // 8, 8, side // 8, 8).permute(0, 1, 2, 4, 3, 5)
    coded = d @ blocks @ d.T
    return (d.T @ (torch.round(coded / step) * step) @ d).permute(0, 1, 2, 4, 3, 5).reshape(n, 3, side, side).clamp(0, 1)


def photograph(rgb, leaf, grounds):
    """One photograph of each leaf as some other camera on some other day might have taken it: (n, 4, side, side)."""
    x = turn(torch.cat([rgb, leaf], 1), 0.5)
    rgb = new_ground(x[:, :3], x[:, 3:], grounds)
    rgb = compress(soften(relight(rgb)))
    rgb = (rgb + uniform(len(rgb), 0, 0.03, rgb.device) * torch.randn_like(rgb)).clamp(0, 1)
    return torch.cat([rgb, wobble(x[:, 3:])], 1)

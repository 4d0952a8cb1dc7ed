"""Marks painted on photographed leaves that are known not to have them: the same leaf with and without powder, spots, mosaic or
crinkles, on every crop alike, so that a mark cannot be learnt as the look of the one crop it was photographed on. Everything is made of
noise of several grains; nothing is copied from a photograph. Numbers were set by looking at sheets of painted leaves."""
import torch, torch.nn.functional as F


def uniform(n, low, high, device):
    return (low + (high - low) * torch.rand(n, device=device)).view(-1, 1, 1, 1)


def grain(n, side, cells, device, mode="bicubic"):
    """Noise of one grain, (n, 1, side, side), mean 0 and spread about 1."""
    x = F.interpolate(torch.randn(n, 1, cells, cells, device=device), size=(side, side), mode=mode, align_corners=False)
    return x / x.flatten(1).std(1).view(-1, 1, 1, 1).clamp(min=1e-3)


def blend(n, side, grains, device):
    """Noise of several grains, each picture with shares of its own."""
    total = 0
    for cells in grains: total = total + uniform(n, 0, 1, device) * grain(n, side, cells, device)
    return total / total.flatten(1).std(1).view(-1, 1, 1, 1).clamp(min=1e-3)


def pick(n, side, grains, device):
    """Noise of one grain, another for each picture."""
    which = torch.randint(len(grains), (n,), device=device)
    out = torch.empty(n, 1, side, side, device=device)
    for k, cells in enumerate(grains):
        here = (which == k).nonzero()[:, 0]
        if len(here): out[here] = grain(len(here), side, cells, device)
    return out


def above(noise, leaf, share, soft):
    """1 where the noise is among the highest `share` on the leaf, with an edge as soft as `soft` of its spread."""
    flat = torch.where(leaf > 0.5, noise, noise.new_tensor(-9.0)).flatten(1)[:, ::7].sort(1, descending=True).values
    inside = (flat > -8).float().sum(1)
    at = (share.flatten() * inside).long().clamp(0, flat.shape[1] - 1)
    level = flat.gather(1, at[:, None]).view(-1, 1, 1, 1)
    return torch.sigmoid((noise - level) / soft)


def light_of(rgb, leaf):
    """Brightness of the leaf's lit parts, a measure of the light on it."""
    luma = (rgb * rgb.new_tensor([0.299, 0.587, 0.114]).view(1, 3, 1, 1)).sum(1, keepdim=True)
    mean = (luma * leaf).sum((2, 3), keepdim=True) / leaf.sum((2, 3), keepdim=True).clamp(min=1)
    return luma, mean.clamp(0.1, 0.9)


def colours(n, low, high, device):
    """Colours between two, each channel nearly alike in where it lies."""
    low, high = (torch.tensor(c, device=device).view(1, 3, 1, 1) for c in (low, high))
    at = (torch.rand(n, 1, 1, 1, device=device) + 0.15 * torch.randn(n, 3, 1, 1, device=device)).clamp(0, 1)
    return low + (high - low) * at


def powder(rgb, leaf):
    """Patches of powder, or a thin film of it over most of the leaf, as on undersides, with some brown where it has been for long."""
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    luma, mean = light_of(rgb, leaf)
    is_film = torch.rand(n, 1, 1, 1, device=device) < 0.4
    share = torch.where(is_film.flatten(), 0.45 + 0.6 * torch.rand(n, device=device), torch.rand(n, device=device) ** 2 * 0.88 + 0.015)
    where = above(blend(n, side, [4, 7, 14, 28], device) + uniform(n, 0, 1.2, device) * pick(n, side, [10, 18, 28, 40], device), leaf, share,
                  torch.where(is_film, uniform(n, 0.3, 1, device), uniform(n, 0.08, 0.5, device)))
    dust = torch.sigmoid(uniform(n, 0.3, 1.6, device) * blend(n, side, [28, 56, 112, 224], device) + uniform(n, 0, 2.5, device))
    white = colours(n, [0.8, 0.8, 0.74], [0.98, 0.98, 0.96], device) * (uniform(n, 0.95, 1.7, device) * mean.sqrt()).clamp(max=1.08)
    cover = where * dust * torch.where(is_film, uniform(n, 0.25, 0.75, device), uniform(n, 0.35, 1, device)) * leaf
    relief = 0.6 + 0.4 * (luma / mean).clamp(0.4, 1.6)
    worn = (torch.rand(n, 1, 1, 1, device=device) < 0.3).float() * uniform(n, 0.2, 0.7, device)
    brown = above(blend(n, side, [9, 18, 40], device), leaf, torch.rand(n, device=device) * 0.12 + 0.01, uniform(n, 0.1, 0.4, device)) * leaf * worn
    tan = colours(n, [0.4, 0.28, 0.15], [0.7, 0.55, 0.38], device) * (mean * 2).clamp(0.5, 1.3)
    out = rgb * (1 - cover) + (white * relief).clamp(max=1) * cover
    return out * (1 - brown) + tan.clamp(max=1) * brown, {"white-powder": 1, "healthy": 0, "spotted": -1, "brown-spots": -1}


def glare(rgb, leaf):
    """Light mirrored by a waxy leaf, which is no powder: broad and smooth, following the relief."""
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    luma, mean = light_of(rgb, leaf)
    wide = above(blend(n, side, [3, 5, 9], device), leaf, torch.rand(n, device=device) * 0.5 + 0.05, uniform(n, 0.4, 1.2, device))
    shine = wide * uniform(n, 0.1, 0.7, device) * (luma / mean).clamp(0.2, 1.6) * leaf
    sky = colours(n, [0.75, 0.85, 0.9], [1, 1, 1], device)
    veil = uniform(n, -0.3, 0.5, device).clamp(min=0) * leaf
    rgb = rgb * (1 - veil) + sky * mean.sqrt() * veil
    return rgb * (1 - 0.7 * shine.clamp(max=1)) + sky * 0.7 * shine.clamp(max=1), {}


def spots(rgb, leaf):
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    _, mean = light_of(rgb, leaf)
    noise = pick(n, side, [9, 14, 22, 32, 48], device) + uniform(n, 0, 0.35, device) * grain(n, side, 80, device)
    share = torch.rand(n, device=device) ** 2 * 0.25 + 0.008
    core = above(noise, leaf, share, uniform(n, 0.03, 0.15, device))
    inner = above(noise, leaf, share * (0.15 + 0.3 * torch.rand(n, device=device)), uniform(n, 0.05, 0.2, device))
    halo = above(noise, leaf, (share * (1.5 + 2 * torch.rand(n, device=device))).clamp(max=0.6), uniform(n, 0.1, 0.4, device))
    lit = (mean / 0.4).clamp(0.5, 1.6)
    yellow = colours(n, [0.55, 0.5, 0.1], [0.85, 0.8, 0.35], device) * lit
    brown = colours(n, [0.16, 0.09, 0.05], [0.55, 0.38, 0.22], device) * lit
    middle = colours(n, [0.12, 0.08, 0.06], [0.85, 0.8, 0.7], device) * lit
    ring = (torch.rand(n, 1, 1, 1, device=device) < 0.45).float() * halo * uniform(n, 0.2, 0.8, device) * leaf
    out = rgb * (1 - ring) + yellow.clamp(max=1) * ring
    core = core * leaf * uniform(n, 0.6, 1, device)
    out = out * (1 - core) + brown.clamp(max=1) * core
    inner = inner * leaf * (torch.rand(n, 1, 1, 1, device=device) < 0.5).float() * uniform(n, 0.3, 1, device)
    return out * (1 - inner) + middle.clamp(max=1) * inner, {"spotted": 1, "haloed-spots": -1, "ringed-spots": -1, "brown-spots": -1, "yellow-patches": -1, "healthy": 0}


def rust(rgb, leaf):
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    _, mean = light_of(rgb, leaf)
    noise = pick(n, side, [36, 48, 64, 80], device) + uniform(n, 0, 1, device) * grain(n, side, 5, device)
    share = torch.rand(n, device=device) ** 1.5 * 0.1 + 0.008
    lit = (mean / 0.4).clamp(0.5, 1.6)
    halo = above(noise, leaf, share * (1.8 + 2 * torch.rand(n, device=device)), uniform(n, 0.1, 0.3, device)) * uniform(n, 0, 0.7, device) * leaf
    core = above(noise, leaf, share, uniform(n, 0.04, 0.15, device)) * uniform(n, 0.6, 1, device) * leaf
    yellow = colours(n, [0.6, 0.6, 0.15], [0.9, 0.85, 0.4], device) * lit
    orange = colours(n, [0.3, 0.14, 0.05], [0.75, 0.42, 0.12], device) * lit
    out = rgb * (1 - halo) + yellow.clamp(max=1) * halo
    return out * (1 - core) + orange.clamp(max=1) * core, {"rust-pustules": 1, "spotted": 1, "haloed-spots": -1, "brown-spots": -1, "yellow-patches": -1, "healthy": 0}


def mosaic(rgb, leaf):
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    luma, mean = light_of(rgb, leaf)
    noise = pick(n, side, [12, 18, 26, 40], device) + uniform(n, 0.2, 1.2, device) * grain(n, side, 6, device) + uniform(n, 0, 0.4, device) * grain(n, side, 70, device)
    patch = above(noise, leaf, torch.rand(n, device=device) * 0.6 + 0.1, uniform(n, 0.05, 0.25, device)) * uniform(n, 0.35, 1, device) * leaf
    yellow = colours(n, [0.6, 0.68, 0.15], [1, 0.95, 0.45], device) * (0.4 + 0.6 * luma / mean) * (mean * 2).clamp(0.5, 1.3)
    return rgb * (1 - patch) + yellow.clamp(max=1) * patch, {"mottled": 1, "yellow-patches": -1, "healthy": 0}


def crinkles(rgb, leaf):
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    height = pick(n, side, [10, 14, 20, 28], device) + 0.3 * grain(n, side, 40, device)
    turn = uniform(n, 0, 6.2832, device)
    dx, dy = F.pad(height[..., 1:] - height[..., :-1], (0, 1)), F.pad(height[..., 1:, :] - height[..., :-1, :], (0, 0, 0, 1))
    slope = dx * turn.cos() + dy * turn.sin()
    slope = slope / slope.flatten(1).std(1).view(-1, 1, 1, 1)
    shade = (uniform(n, 0.07, 0.24, device) * slope).clamp(-0.6, 0.7) * leaf
    return (rgb * (1 + shade)).clamp(0, 1), {"puckered": 1, "curled": 1, "healthy": 0}


def stipples(rgb, leaf):
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    noise = pick(n, side, [75, 112], device) + uniform(n, 0, 1.5, device) * grain(n, side, 5, device)
    dots = above(noise, leaf, torch.rand(n, device=device) * 0.15 + 0.02, uniform(n, 0.1, 0.3, device)) * uniform(n, 0.3, 0.8, device) * leaf
    pale = colours(n, [0.7, 0.75, 0.5], [0.95, 0.95, 0.8], device)
    return rgb * (1 - dots) + pale * dots, {"stippled": 1, "silver-flecks": -1, "healthy": 0}


def holes(rgb, leaf):
    """Bites that show what lies behind: here the picture of another leaf's ground, greyed; the mask loses them as the camera's does."""
    n, side, device = len(rgb), rgb.shape[-1], rgb.device
    noise = pick(n, side, [6, 9, 14, 22], device) + uniform(n, 0, 0.3, device) * grain(n, side, 50, device)
    gone = above(noise, leaf, torch.rand(n, device=device) ** 2 * 0.2 + 0.012, uniform(n, 0.01, 0.03, device)) * leaf
    behind = rgb.roll(1, 0).roll(side // 2, 2).roll(side // 2, 3) * uniform(n, 0.3, 1, device)
    return rgb * (1 - gone) + behind * gone, {"holes": 1, "edge-bites": -1, "shot-holes": -1, "ragged-holes": -1, "healthy": 0}, leaf * (1 - gone)


PAINTS = {"white-powder": powder, "spotted": spots, "rust-pustules": rust, "mottled": mosaic, "puckered": crinkles, "stippled": stipples, "holes": holes}


def plainly_differs(made, rgb, leaf):
    """Whether a hundredth of the leaf changed by more than 6 of 100: what is fainter is not asked for."""
    change = ((made - rgb).abs().mean(1, keepdim=True) * leaf)
    return ((change > 0.06).float().sum((1, 2, 3)) > 0.01 * leaf.sum((1, 2, 3))).view(-1)


def paint(rgb, leaf, labels, marks, share):
    """Paints one mark on about `share` of the leaves, where it is known to be missing; glare on more than half as many again."""
    n, device = len(rgb), rgb.device
    at = {mark: k for k, mark in enumerate(marks)}
    dice, kinds = torch.rand(n, device=device), list(PAINTS)
    # Powder, the first, twice as often: it is the faintest.
    kind = (torch.randint(len(kinds) + 1, (n,), device=device) - 1).clamp(min=0)
    rgb, leaf, labels = rgb.clone(), leaf.clone(), labels.clone()
    dull = ((dice > 1 - 0.6 * share)).nonzero()[:, 0]
    if len(dull): rgb[dull] = glare(rgb[dull], leaf[dull])[0]
    for k, name in enumerate(kinds):
        here = ((dice < share) & (kind == k) & (labels[:, at[name]] == 0)).nonzero()[:, 0]
        if len(here) == 0: continue
        made, said, *mask = PAINTS[name](rgb[here], leaf[here])
        plain = plainly_differs(made, rgb[here], leaf[here])
        rgb[here] = made.clamp(0, 1)
        if mask: leaf[here] = mask[0]
        for mark, value in said.items(): labels[here, at[mark]] = torch.where(plain, value, -1.0)
        if name == "white-powder":  # thick powder hides the rest
            for mark in ("spotted", "mottled", "puckered", "stippled"):
                hidden = labels[here, at[mark]] == 1
                labels[here, at[mark]] = torch.where(hidden, -1, labels[here, at[mark]])
    return rgb, leaf, labels

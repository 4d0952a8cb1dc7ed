"""Trains the network of signs and everything it is compared with, on one graphics card. Run where PyTorch is at hand:

    python3 train.py --data FOLDER --to OUT --name NAME --nets all:large:mask:plain:without-chilli-india,… [--seconds 500]

FOLDER: `photos.jsonl` and `crops/` as `cut-photos.ts` writes them, and in `rendered/` shards of `training/rendered-leaves/write-examples.ts`.
Nets are `taught:size:sees:styles:fold`. Taught: `real` photographs, `painted` (and marks painted on them), `rendered` leaves, `both` (real and
rendered), `all`. Fold: `all`, `without-SET`, 0 to 4 (a fifth of the groups held back), `none` (of photographs). They learn side by side
from one album of pictures made beforehand on the card (200 kB each), each only from what is not held back from it; each net's step is one
recorded graph of the card, played on one of a few lanes. Seeded. OUT gets `NAME.npz` (answers on what a net never saw; features) and `NAME.pt` (weights of those of fold `all` or `none` that --keep names).
"""
import argparse, json, math, os, time
import cv2, numpy as np, torch, torch.nn as nn, torch.nn.functional as F
from augment import photograph
from labels import MARKS, labels_of, labels_of_rendered
from network import SignsNetwork
from paint import blend, colours, grain, paint, uniform

DEV = "cuda" if torch.cuda.is_available() else "cpu"
FOLDS, LANES = 5, 3
# Pictures of each kind in one page of the album, and what one net takes of them.
PAGE = dict(real=96, painted=96, rendered=112, noleaf=16)
TAKES = dict(real=("real",), painted=("real", "painted"), rendered=("rendered",), both=("real", "rendered"), all=("real", "painted", "rendered"))
# What a net sees in one step: leaves, and pictures without any.
LEAVES, NO_LEAVES = 96, 12
KINDS = list(PAGE)
# One output more than there are marks: whether this is a leaf at all.
OUTPUTS = len(MARKS) + 1


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
    rows, rgb, leaf = [], [], []
    for name in sorted(name for name in os.listdir(folder) if name.endswith(".json")):
        shard = json.load(open(f"{folder}/{name}"))
        n, side, stem = shard["count"], shard["size"], f"{folder}/{name.removesuffix('.json')}"
        rows += [dict(set="rendered", label="", labels=labels_of_rendered(dict(zip(shard["marks"], e["marks"])))) for e in shard["examples"]]
        rgb.append(torch.from_numpy(np.fromfile(f"{stem}.rgb", np.uint8).reshape(n, side, side, 3)).permute(0, 3, 1, 2).contiguous())
        leaf.append(torch.from_numpy(np.fromfile(f"{stem}.mask", np.uint8).reshape(n, 1, side, side)))
    print(len(rows), "rendered", flush=True)
    return rows, torch.cat(rgb), torch.cat(leaf)


class Pool:
    """Examples on the card, drawn so that every set and label is met alike."""

    def __init__(self, rows, rgb, leaf):
        self.rgb, self.leaf = rgb.to(DEV), leaf.to(DEV)
        self.labels = torch.tensor([[row["labels"].get(mark, -1) for mark in MARKS] for row in rows], dtype=torch.float32, device=DEV)
        keys = [f"{row['set']}/{row['label']}" for row in rows]
        count = {key: keys.count(key) for key in set(keys)}
        self.weights = torch.tensor([count[key] ** -0.6 if key.split("/")[0] != "other" else 0 for key in keys], device=DEV)

    def draw(self, n):
        at = torch.multinomial(self.weights, n, replacement=True)
        return self.rgb[at].float() / 255, self.leaf[at].float() / 255, self.labels[at], at


def no_leaves(pool, grounds, n):
    """What is no leaf, outlined as if it were one: noise, plain colours, a ground, a photograph cut into squares and shuffled."""
    side = pool.rgb.shape[-1]
    leaf = pool.leaf[torch.randint(len(pool.leaf), (n,), device=DEV)].float() / 255
    leaf = torch.where(torch.rand(n, 1, 1, 1, device=DEV) < 0.3, torch.ones_like(leaf), leaf)
    noise = colours(n, [0.05, 0.05, 0.05], [0.95, 0.95, 0.95], DEV) + uniform(n, 0, 0.4, DEV) * blend(n, side, [3, 8, 28, 112], DEV) * (0.5 + torch.rand(n, 3, 1, 1, device=DEV))
    other = pool.rgb[torch.randint(len(pool.rgb), (n,), device=DEV)].float() / 255
    cells = 7
    squares = other.view(n, 3, cells, side // cells, cells, side // cells).permute(0, 2, 4, 1, 3, 5).reshape(n, cells * cells, 3, side // cells, side // cells)
    order = torch.rand(n, cells * cells, device=DEV).argsort(1)
    squares = squares.gather(1, order.view(n, -1, 1, 1, 1).expand_as(squares))
    shuffled = squares.view(n, cells, cells, 3, side // cells, side // cells).permute(0, 3, 1, 4, 2, 5).reshape(n, 3, side, side)
    ground = grounds[torch.randint(len(grounds), (n,), device=DEV)].float() / 255
    ground = ground[:, :, : side // 4, : side // 4]
    ground = F.interpolate(ground, size=(side, side), mode="bilinear", align_corners=False)
    dice = torch.rand(n, 1, 1, 1, device=DEV)
    rgb = torch.where(dice < 0.45, noise, torch.where(dice < 0.75, shuffled, ground)).clamp(0, 1)
    return rgb, leaf, torch.full((n, len(MARKS)), -1.0, device=DEV), torch.full((n,), -1, device=DEV)


@torch.no_grad()
def make_page(photographs, rendered, grounds):
    """One page of the album: pictures (n, 4, side, side), labels with `leaf` last, which photograph each is of (-1: none), its kind."""
    parts, kinds = [], []
    for k, kind in enumerate(KINDS):
        n = PAGE[kind]
        if kind == "noleaf": part = no_leaves(photographs, grounds, n)
        elif kind == "rendered":
            part = (*paint(*rendered.draw(n)[:3], MARKS, 0.35), torch.full((n,), -1, device=DEV))
        else:
            rgb, leaf, labels, at = photographs.draw(n)
            if kind == "painted": rgb, leaf, labels = paint(rgb, leaf, labels, MARKS, 0.8)
            part = (rgb, leaf, labels, at)
        is_leaf = torch.full((n, 1), 0.0 if kind == "noleaf" else 1.0, device=DEV)
        parts.append((part[0], part[1], torch.cat([part[2], is_leaf], 1), part[3]))
        kinds.append(torch.full((n,), k, device=DEV))
    rgb, leaf, labels, at = (torch.cat(p) for p in zip(*parts))
    return photograph(rgb, leaf, grounds), labels, at, torch.cat(kinds)


class Album:
    """Pictures as bytes, with what is known of each: labels, which photograph it is of (-1: none), its kind."""

    @torch.no_grad()
    def __init__(self, count, *of):
        side = of[0].rgb.shape[-1]
        size = sum(PAGE.values())
        self.pages = count // size
        self.x = torch.empty(self.pages * size, 4, side, side, dtype=torch.uint8, device=DEV)
        rest = []
        for k in range(self.pages):
            x, *known = make_page(*of)
            self.x[k * size : (k + 1) * size] = (x.clamp(0, 1) * 255).round().byte()
            rest.append(known)
        self.labels, self.at, self.kinds = (torch.cat(own) for own in zip(*rest))


def balance_of(pools):
    """Weights by which the leaves with and without a mark count alike, none above 6; `leaf` counts as it comes."""
    labels = torch.cat([pool.labels for pool in pools])
    weights = torch.cat([pool.weights / pool.weights.sum() for pool in pools])[:, None]
    there, missing = ((labels == 1) * weights).sum(0), ((labels == 0) * weights).sum(0)
    return torch.cat([(missing / there.clamp(min=1e-6)).clamp(1 / 6, 6).sqrt(), torch.ones(1, device=labels.device)])


def is_kept_back(row, fold):
    if fold.startswith("without-"): return row["set"] == fold.removeprefix("without-")
    return fold.isdigit() and row["fold"] == int(fold)


class Member:
    """One network among those that learn side by side."""

    def __init__(self, name, rows, args, weight):
        self.name, self.weight = name, weight
        self.taught_by, size, sees, styles, self.fold = name.split(":")
        torch.manual_seed(hash_of(f"{args.seed} {name}") % 2**31)
        self.net = SignsNetwork(size, OUTPUTS, sees, styles).to(DEV).to(memory_format=torch.channels_last)
        self.mean = [p.detach().clone() for p in self.net.parameters()]
        self.rate = torch.tensor(args.rate, device=DEV)
        self.opt = torch.optim.AdamW(self.net.parameters(), self.rate, weight_decay=0.05, capturable=DEV == "cuda")
        self.kept = [i for i, row in enumerate(rows) if row["set"] == "other" or self.fold == "none" or is_kept_back(row, self.fold)]
        seen = torch.ones(len(rows) + 1, dtype=torch.bool)
        seen[self.kept] = False
        self.seen = seen.to(DEV)  # the last stands for what is no photograph
        takes = [kind in TAKES[self.taught_by] for kind in KINDS]
        self.takes = torch.tensor(takes, device=DEV)

    def may_see(self, album):
        """Notes which pictures of the album this net learns from."""
        self.leaves = (self.seen[album.at] & self.takes[album.kinds]).nonzero()[:, 0]
        self.noleaves = (album.kinds == KINDS.index("noleaf")).nonzero()[:, 0]

    def draw(self, album, leaves=LEAVES, noleaves=NO_LEAVES):
        at = torch.cat([own[torch.randint(len(own), (n,), device=DEV)] for own, n in ((self.leaves, leaves), (self.noleaves, noleaves))])
        return (album.x[at].float() / 255).contiguous(memory_format=torch.channels_last), album.labels[at]

    def step(self, album):
        x, labels = self.draw(album)
        with torch.autocast(DEV, torch.bfloat16, cache_enabled=False): z, _ = self.net(x)
        loss = F.binary_cross_entropy_with_logits(z.float(), labels.clamp(min=0) * 0.96 + 0.02, reduction="none")
        known = (labels >= 0) * torch.where(labels == 1, self.weight, 1 / self.weight)
        loss = (loss * known).sum() / known.sum()
        loss.backward()
        nn.utils.clip_grad_norm_(self.net.parameters(), 1.0)
        self.opt.step()
        torch._foreach_lerp_(self.mean, [p.detach() for p in self.net.parameters()], 0.002)
        for p in self.net.parameters(): p.grad.zero_()
        return loss.detach()

    def record(self, album, pool):
        """Plays a few steps, then records one as a graph."""
        lane = torch.cuda.Stream()
        lane.wait_stream(torch.cuda.current_stream())
        with torch.cuda.stream(lane):
            for _ in range(3): self.step(album)
        torch.cuda.current_stream().wait_stream(lane)
        self.graph = torch.cuda.CUDAGraph()
        with torch.cuda.graph(self.graph, pool=pool): self.loss = self.step(album)

    @torch.no_grad()
    def settle(self, album):
        """Takes the averaged weights, and means and spreads of every layer anew: those kept along the way do not belong to them."""
        for p, mean in zip(self.net.parameters(), self.mean): p.copy_(mean)
        for m in self.net.modules():
            if isinstance(m, nn.BatchNorm2d): m.reset_running_stats(); m.momentum = None
        self.net.train()
        styles, self.net.styles = self.net.styles, "plain"
        for _ in range(24): self.net(self.draw(album, 128, 0)[0])
        self.net.styles = styles
        self.net.eval()
        self.features = torch.cat([self.net(self.draw(album, 128, 0)[0])[1] for _ in range(24)])


@torch.no_grad()
def answers_of(net, rgb, leaf):
    """Logits from four views (as is, mirrored, upside down, both) and the features of the first."""
    logits, features = [], []
    for at in torch.arange(len(rgb)).split(128):
        x = torch.cat([rgb[at].to(DEV).float(), leaf[at].to(DEV).float()], 1) / 255
        views = [net(v) for v in (x, x.flip(3), x.flip(2), x.flip(2, 3))]
        logits.append(torch.stack([v[0] for v in views], 1).float().cpu())
        features.append(views[0][1].float().cpu())
    return torch.cat(logits).numpy(), torch.cat(features).numpy()


def train(args):
    rows, rgb, leaf = load_real(args.data)
    photographs, rendered = Pool(rows, rgb, leaf), Pool(*load_rendered(f"{args.data}/rendered"))
    # Grounds come from a set that is never the one tested on.
    grounds = rgb[[i for i, row in enumerate(rows) if row["set"] == "papaya-spad"]].to(DEV)
    weights = {name: balance_of(pools) for name, pools in
               dict(real=[photographs], painted=[photographs], rendered=[rendered], both=[photographs, rendered], all=[photographs, rendered]).items()}
    members = [Member(name, rows, args, weights[name.split(":")[0]]) for name in args.nets.split(",")]
    torch.manual_seed(hash_of(f"{args.seed} {args.name}") % 2**31)
    print([m.name for m in members], f"{len(rows)} photographs, {sum(p.numel() for p in members[0].net.parameters())} weights", flush=True)
    start = time.time()
    album = Album(args.pictures, photographs, rendered, grounds)
    for member in members: member.may_see(album)
    print(f"album of {len(album.x)} in {time.time() - start:.0f} s", flush=True)
    recorded = DEV == "cuda"
    lanes = [torch.cuda.Stream() for _ in range(LANES)] if recorded else [None]
    if recorded:
        pools = [torch.cuda.graph_pool_handle() for _ in lanes]
        for k, member in enumerate(members): member.record(album, pools[k % LANES])
        torch.cuda.synchronize()
    print(f"{len(members)} nets ready", flush=True)
    start, step = time.time(), 0
    while (part := max(step / args.steps, (time.time() - start) / args.seconds)) < 1:
        rate = args.rate * min(1, (step + 1) / 100) * (0.5 + 0.5 * math.cos(math.pi * part)) + 1e-6
        for k, lane in enumerate(lanes):
            with torch.cuda.stream(lane):
                for member in members[k::len(lanes)]:
                    member.rate.fill_(rate)
                    if recorded: member.graph.replay()
                    else: member.loss = member.step(album)
        step += 1
        if step % 50 == 0 and recorded: torch.cuda.synchronize()
        if step % 300 == 0: print(f"{args.name} {step} steps, {time.time() - start:.0f} s, loss {[round(float(m.loss), 3) for m in members[:6]]}", flush=True)
    if recorded: torch.cuda.synchronize()
    print(f"{args.name} {step} steps in {time.time() - start:.0f} s", flush=True)
    said, weights = {}, {}
    keep = args.keep.split(",") if args.keep else []
    for member in members:
        member.settle(album)
        wants_all = member.name in keep
        at = list(range(len(rows))) if wants_all else member.kept
        logits, features = answers_of(member.net, rgb[at], leaf[at])
        said[f"{member.name}/ids"] = np.array([rows[i]["id"] for i in at])
        said[f"{member.name}/kept"] = np.array([i in set(member.kept) for i in at])
        said[f"{member.name}/logits"] = logits.astype(np.float16)
        if wants_all:
            said[f"{member.name}/features"] = features.astype(np.float16)
            said[f"{member.name}/taught"] = member.features.float().cpu().numpy().astype(np.float16)
            if member.fold in ("all", "none"): weights[member.name] = {k: v.half() if v.is_floating_point() else v for k, v in member.net.state_dict().items()}
        inside = [k for k, i in enumerate(at) if i in set(member.kept)]
        print(f"{member.name}: {quick_look(rows, member.kept, logits[inside])}", flush=True)
    np.savez_compressed(f"{args.to}/{args.name}.npz", steps=step, **said)
    if weights: torch.save(weights, f"{args.to}/{args.name}.pt")


def auc(there, missing):
    """Share of pairs put in the right order."""
    if len(there) < 3 or len(missing) < 3: return None
    return float(np.mean((there[:, None] > missing[None]) + 0.5 * (there[:, None] == missing[None])))


def quick_look(rows, kept, logits):
    """Ranking by set and mark on what was kept back, against the set's healthy leaves."""
    mean, out = logits.mean(1), {}
    for name in sorted({rows[i]["set"] for i in kept}):
        for k, mark in enumerate(MARKS):
            said = np.array([rows[i]["labels"].get(mark, -1) if rows[i]["set"] == name else -1 for i in kept])
            healthy = np.array([rows[i]["label"] == "healthy" for i in kept])
            value = auc(mean[said == 1, k], mean[(said == 0) & healthy, k]) if healthy.any() else auc(mean[said == 1, k], mean[said == 0, k])
            if value is not None: out[f"{name.split('-')[0]} {mark}"] = round(value, 3)
    return out


def main():
    a = argparse.ArgumentParser()
    a.add_argument("--data", required=True); a.add_argument("--to", required=True); a.add_argument("--name", required=True)
    a.add_argument("--nets", required=True); a.add_argument("--keep", default="")
    a.add_argument("--seed", type=int, default=1); a.add_argument("--rate", type=float, default=2.5e-3)
    a.add_argument("--pictures", type=int, default=120000); a.add_argument("--steps", type=int, default=6000); a.add_argument("--seconds", type=float, default=1e9)
    args = a.parse_args()
    os.makedirs(args.to, exist_ok=True)
    train(args)


if __name__ == "__main__":
    main()

"""Trains the network of signs and everything it is compared with. Run where PyTorch and a graphics card are at hand:

    python3 train.py --data FOLDER --to OUT --taught all --nets small:mask:all,small:mask:without-chilli-india [--steps 2000] [--seconds 500]

FOLDER: `photos.jsonl` and `crops/` as `cut-photos.ts` writes them, and in `rendered/` shards of `training/rendered-leaves/write-examples.ts`.
What is taught: `real` photographs, `painted` (marks painted on them besides), `rendered` leaves, `both` (real and rendered), `all` (painted and
rendered). Nets are `size:sees:fold`: fold `all`, `without-SET`, 0 to 4 (a fifth of the groups held back) or `none` (of photographs). They
learn side by side from one stream of pictures, each only from what is not held back from it. Seeded; the answers on what a net never saw
go to `OUT/TAUGHT-SIZE-SEES-FOLD.npz`, the weights of fold `all` to a `.pt` beside.
"""
import argparse, json, math, os, time
import cv2, numpy as np, torch, torch.nn as nn, torch.nn.functional as F
from augment import photograph
from labels import MARKS, labels_of, labels_of_rendered
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


def load_rendered(folder, least, before=None):
    """Pool of all shards of `training/rendered-leaves/write-examples.ts` that are written, once there are `least`; `before` where none came."""
    names = lambda: sorted(name for name in os.listdir(folder) if name.endswith(".json"))
    while len(names()) < least: time.sleep(1)
    if before is not None and len(names()) == before.shards: return before
    time.sleep(1)
    rows, rgb, leaf = [], [], []
    here = names()
    for name in here:
        shard = json.load(open(f"{folder}/{name}"))
        n, side, stem = shard["count"], shard["size"], f"{folder}/{name.removesuffix('.json')}"
        rows += [dict(set="rendered", label="", labels=labels_of_rendered(dict(zip(shard["marks"], e["marks"])))) for e in shard["examples"]]
        rgb.append(torch.from_numpy(np.fromfile(f"{stem}.rgb", np.uint8).reshape(n, side, side, 3)).permute(0, 3, 1, 2).contiguous())
        leaf.append(torch.from_numpy(np.fromfile(f"{stem}.mask", np.uint8).reshape(n, 1, side, side)))
    print(len(rows), "rendered", flush=True)
    pool = Pool(rows, torch.cat(rgb), torch.cat(leaf))
    pool.shards = len(here)
    return pool


def table_of(rows):
    return torch.tensor([[row["labels"].get(mark, -1) for mark in MARKS] for row in rows], dtype=torch.float32).view(-1, len(MARKS))


class Pool:
    """Examples on the card, drawn so that every set and label is met alike."""

    def __init__(self, rows, rgb, leaf):
        self.rgb, self.leaf = rgb.to(DEV), leaf.to(DEV)
        self.labels = table_of(rows).to(DEV)
        keys = [f"{row['set']}/{row['label']}" for row in rows]
        count = {key: keys.count(key) for key in set(keys)}
        self.weights = torch.tensor([count[key] ** -0.6 if key.split("/")[0] != "other" else 0 for key in keys], device=DEV)

    def draw(self, n):
        at = torch.multinomial(self.weights, n, replacement=True)
        return self.rgb[at].float() / 255, self.leaf[at].float() / 255, self.labels[at], at


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


@torch.no_grad()
def make_batch(photographs, rendered, grounds, n, painted):
    """Pictures taken anew, what is known of them, and which photograph each is of (-1: rendered)."""
    of_photographs = n if rendered is None else 0 if photographs is None else 5 * n // 8
    parts = []
    if of_photographs:
        colour, shape, labels, at = photographs.draw(of_photographs)
        if painted: colour, shape, labels = paint(colour, shape, labels, MARKS, 0.5)
        parts.append((colour, shape, labels, at))
    if of_photographs < n:
        colour, shape, labels, at = rendered.draw(n - of_photographs)
        parts.append((colour, shape, labels, at * 0 - 1))
    colour, shape, labels, at = (torch.cat(p) for p in zip(*parts))
    return photograph(colour, shape, grounds), labels, at


@torch.no_grad()
def settle(member, batches):
    """Means and spreads of every layer taken anew: those averaged along the way do not belong to the averaged weights."""
    net = member.best.module
    for m in net.modules():
        if isinstance(m, nn.BatchNorm2d): m.reset_running_stats(); m.momentum = None
    net.train()
    for x, _, at in batches: net(x[member.may_see(at)].contiguous(memory_format=torch.channels_last))
    net.eval()


class Member:
    """One network among those that learn side by side."""

    def __init__(self, name, rows, args):
        self.name = name
        size, sees, self.fold = name.split(":")
        torch.manual_seed(hash_of(f"{args.seed} {name}") % 2**31)
        self.net = SignsNetwork(size, len(MARKS), sees).to(DEV).to(memory_format=torch.channels_last)
        self.best = torch.optim.swa_utils.AveragedModel(self.net, multi_avg_fn=torch.optim.swa_utils.get_ema_multi_avg_fn(0.995), use_buffers=True)
        self.opt = torch.optim.AdamW(self.net.parameters(), args.rate, weight_decay=0.05)
        self.kept = [i for i, row in enumerate(rows) if row["set"] == "other" or self.fold == "none" or is_kept_back(row, self.fold)]
        self.taught = sorted(set(range(len(rows))) - set(self.kept))
        seen = torch.zeros(len(rows) + 1, dtype=torch.bool)
        seen[self.taught] = True
        seen[-1] = True  # rendered leaves are held back from none
        self.seen = seen.to(DEV)

    def may_see(self, at):
        return self.seen[at].nonzero()[:, 0]

    def learn(self, x, labels, at, weight, rate):
        here = self.may_see(at)
        x, labels = x[here].contiguous(memory_format=torch.channels_last), labels[here]
        for g in self.opt.param_groups: g["lr"] = rate
        with torch.autocast(DEV, torch.bfloat16): z, _ = self.net(x)
        loss = F.binary_cross_entropy_with_logits(z.float(), labels.clamp(min=0) * 0.96 + 0.02, reduction="none")
        known = (labels >= 0) * torch.where(labels == 1, weight, 1 / weight)
        loss = (loss * known).sum() / known.sum()
        self.opt.zero_grad(set_to_none=True); loss.backward()
        nn.utils.clip_grad_norm_(self.net.parameters(), 1.0)
        self.opt.step(); self.best.update_parameters(self.net)
        return loss.detach()


def train(args):
    rows, rgb, leaf = load_real(args.data)
    photographs = None if args.taught == "rendered" else Pool(rows, rgb, leaf)
    rendered = load_rendered(f"{args.data}/rendered", args.shards) if args.taught in ("rendered", "both", "all") else None
    painted = args.taught in ("painted", "all")
    # Grounds come from a set that is never the one tested on.
    grounds = rgb[[i for i, row in enumerate(rows) if row["set"] == "papaya-spad"]].to(DEV)
    members = [Member(name, rows, args) for name in args.nets.split(",")]
    torch.manual_seed(hash_of(f"{args.seed} {args.taught}") % 2**31)
    print(args.taught, [m.name for m in members], f"{len(rows)} photographs", flush=True)
    batch = lambda: make_batch(photographs, rendered, grounds, args.batch, painted)
    start, step = time.time(), 0
    while (part := max(step / args.steps, (time.time() - start) / args.seconds)) < 1:
        if rendered is not None and step % 150 == 149: rendered = load_rendered(f"{args.data}/rendered", args.shards, rendered)
        weight = balance_of([pool for pool in (photographs, rendered) if pool is not None]) if step % 150 == 0 else weight
        rate = args.rate * min(1, (step + 1) / 100) * (0.5 + 0.5 * math.cos(math.pi * part)) + 1e-6
        x, labels, at = batch()
        losses = [member.learn(x, labels, at, weight, rate) for member in members]
        step += 1
        if step % 200 == 0: print(f"{args.taught} {step} steps, {time.time() - start:.0f} s, loss {float(losses[0]):.3f}", flush=True)
    print(f"{args.taught} {step} steps in {time.time() - start:.0f} s", flush=True)
    last = [batch() for _ in range(30)]
    for member in members:
        settle(member, last)
        name = f"{args.taught}-{member.name.replace(':', '-')}"
        logits, features = answers_of(member.best.module, rgb[member.kept], leaf[member.kept])
        taught = {}
        if member.taught:
            of_taught = answers_of(member.best.module, rgb[member.taught], leaf[member.taught])
            taught = dict(taught=np.array([rows[i]["id"] for i in member.taught]), taughtLogits=of_taught[0], taughtFeatures=of_taught[1].astype(np.float16))
        if member.fold == "all": torch.save(member.best.module.state_dict(), f"{args.to}/{name}.pt")
        np.savez_compressed(f"{args.to}/{name}.npz", ids=np.array([rows[i]["id"] for i in member.kept]), logits=logits, features=features, steps=step, **taught)
        print(f"{name}: {quick_look(rows, member.kept, logits)}", flush=True)


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
    a.add_argument("--data", required=True); a.add_argument("--to", required=True)
    a.add_argument("--taught", required=True); a.add_argument("--nets", required=True)
    a.add_argument("--shards", type=int, default=40); a.add_argument("--seed", type=int, default=1)
    a.add_argument("--steps", type=int, default=2000); a.add_argument("--seconds", type=float, default=1e9)
    a.add_argument("--batch", type=int, default=128); a.add_argument("--rate", type=float, default=2.5e-3)
    args = a.parse_args()
    os.makedirs(args.to, exist_ok=True)
    train(args)


if __name__ == "__main__":
    main()

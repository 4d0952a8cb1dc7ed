"""Writes what the encoder sees of every picture: of photographs as they are (four views), taken anew, and with marks painted on; of rendered
leaves taken anew. `learn.py` fits heads on that in seconds, so that everything can be compared on two plain cores.

    python3 see.py --data FOLDER --to FILE.npz --what clean|anew|painted|rendered [--times 6] [--seed 1]
"""
import argparse, glob, json
import cv2, numpy as np, torch
from augment import photograph
from encoder import SIDE, Encoder
from labels import MARKS, labels_of, labels_of_rendered
from paint import paint


def smaller(picture):
    return cv2.resize(picture, (SIDE, SIDE), interpolation=cv2.INTER_AREA)


def load_photographs(folder):
    rows = [row for row in map(json.loads, open(f"{folder}/photos.jsonl")) if row["cut"]]
    rgb = np.stack([smaller(cv2.imread(f"{folder}/crops/{r['id']}.jpg"))[:, :, ::-1] for r in rows])
    leaf = np.stack([smaller(cv2.imread(f"{folder}/crops/{r['id']}.png", cv2.IMREAD_GRAYSCALE)) for r in rows])
    return rows, torch.from_numpy(rgb.copy()).permute(0, 3, 1, 2).contiguous(), torch.from_numpy(leaf)[:, None]


def load_rendered(folder):
    rows, rgb, leaf = [], [], []
    for name in sorted(glob.glob(f"{folder}/rendered/*.json")):
        shard = json.load(open(name))
        n, side, stem = shard["count"], shard["size"], name.removesuffix(".json")
        rows += [dict(id=f"rendered-{e['seed']}", labels=labels_of_rendered(dict(zip(shard["marks"], e["marks"])))) for e in shard["examples"]]
        rgb += [smaller(p) for p in np.fromfile(f"{stem}.rgb", np.uint8).reshape(n, side, side, 3)]
        leaf += [smaller(p) for p in np.fromfile(f"{stem}.mask", np.uint8).reshape(n, side, side)]
    return rows, torch.from_numpy(np.stack(rgb)).permute(0, 3, 1, 2).contiguous(), torch.from_numpy(np.stack(leaf))[:, None]


def table_of(rows):
    return torch.tensor([[row["labels"].get(mark, -1) for mark in MARKS] for row in rows], dtype=torch.float32).view(-1, len(MARKS))


@torch.no_grad()
def main():
    a = argparse.ArgumentParser()
    a.add_argument("--data", required=True); a.add_argument("--to", required=True); a.add_argument("--what", required=True)
    a.add_argument("--times", type=int, default=1); a.add_argument("--seed", type=int, default=1)
    a.add_argument("--weights", default="../../src/leaf/outline-network.ts")
    args = a.parse_args()
    torch.manual_seed(args.seed)
    torch.set_num_threads(1)
    encoder = Encoder(args.weights)
    photographs = load_photographs(args.data)
    for row in photographs[0]: row["labels"] = labels_of(row)
    rows, rgb, leaf = load_rendered(args.data) if args.what == "rendered" else photographs
    known = table_of(rows)
    # Grounds come from a set that is never the one tested on.
    grounds = photographs[1][[i for i, row in enumerate(photographs[0]) if row["set"] == "papaya-spad"]]
    at_all = [i for i, row in enumerate(rows) if args.what == "clean" or row.get("set") != "other"]
    seen, everywhere, labels, ids = [], [], [], []
    for _ in range(args.times):
        for at in torch.tensor(at_all)[torch.randperm(len(at_all))].split(32):
            colour, shape, said = rgb[at].float() / 255, leaf[at].float() / 255, known[at]
            if args.what == "painted": colour, shape, said = paint(colour, shape, said, MARKS, 0.75)
            if args.what == "clean": x = torch.cat([colour, shape], 1)
            else: x = photograph(colour, shape, grounds)
            views = (x, x.flip(3), x.flip(2), x.flip(2, 3)) if args.what == "clean" else (x,)
            seen.append(torch.stack([encoder(v[:, :3], v[:, 3:]) for v in views], 1).half())
            if args.what in ("clean", "painted"): everywhere.append(torch.stack([encoder(v[:, :3], v[:, 3:], True) for v in views[:1]], 1).half())
            labels.append(said); ids += [rows[i]["id"] for i in at.tolist()]
    extra = dict(everywhere=torch.cat(everywhere).numpy()) if everywhere else {}
    np.savez(args.to, ids=np.array(ids), seen=torch.cat(seen).numpy(), labels=torch.cat(labels).numpy().astype(np.int8), **extra)
    print(len(ids), "seen", flush=True)


if __name__ == "__main__":
    main()

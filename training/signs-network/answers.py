"""Puts together what `train.py` answered: the three experts as one, and every net by itself for the comparison.

    python3 answers.py --data FOLDER --experts A.npz,B.npz --compared C.npz,D.npz --to answers.json

The experts are nets taught on photographs (`real`), on photographs with marks painted on (`painted`) and on rendered leaves (`rendered`).
An expert speaks of a mark where it was shown leaves with it (`speaks_of`). The mean of those who speak ranks leaves; what counts
as evidence is what all of them bear out (`agreed`).
"""
import argparse, json
import numpy as np
from labels import MARKS, labels_of

EXPERTS = ["painted", "real", "rendered"]
PAINTED = ("white-powder", "spotted", "rust-pustules", "mottled", "puckered", "stippled", "holes", "curled")
# The shape of rendered leaves does not carry over: 0.46 to 0.61 on photographs.
SHAPES = ("puckered", "curled")
# How much a leaf counts that does not look like one, beside the distance from what was taught.
NO_LEAF = 0.25


def photos_of(folder):
    rows = {}
    for line in open(f"{folder}/photos.jsonl"):
        row = json.loads(line)
        row["labels"] = labels_of(row)
        rows[row["id"]] = row
    return rows


def speaks_of(rows, without=None):
    """Share of each expert in each mark, (experts, marks); `without` is the set that was left out of teaching."""
    share = np.zeros((len(EXPERTS), len(MARKS)))
    for k, mark in enumerate(MARKS):
        photographed = any(row["labels"].get(mark) == 1 and row["set"] != without for row in rows.values())
        share[0, k] = photographed or mark in PAINTED
        share[1, k] = photographed
        share[2, k] = mark not in SHAPES
    return share / share.sum(0).clip(min=1)


def strangeness_parts(taught):
    """Middle and inverse spread of the features of what a net was taught, so that the distance is 1 on average."""
    spread = np.cov(taught.T)
    n = len(spread)
    return taught.mean(0), np.linalg.inv(spread + 0.01 * np.trace(spread) / n * np.eye(n)) / n


class Answers:
    def __init__(self, *paths):
        self.of = {}
        for path in paths:
            file = np.load(path)
            for name in {key.rsplit("/", 1)[0] for key in file.files if "/" in key}:
                self.of[name] = {key: file[f"{name}/{key}"] for key in ("ids", "kept", "logits", "features", "taught") if f"{name}/{key}" in file.files}

    def by_id(self, name, key):
        return dict(zip(self.of[name]["ids"], self.of[name][key].astype(np.float64)))


def agreed(said):
    """What all of several voices bear out, (photographs, voices, marks) to (photographs, marks): the log odds nearest to 0 where all lie on one
    side of it, else 0. Voices that stay NaN say nothing."""
    least, most = np.nanmin(said, 1), np.nanmax(said, 1)
    return np.where(least > 0, least, np.where(most < 0, most, 0.0))


def run_of(kind, fold, ids, logits, borne, strangeness):
    return kind | dict(fold=fold, ids=[str(i) for i in ids], logits=np.round(logits, 3).tolist(), agreed=np.round(borne, 3).tolist(), strangeness=np.round(strangeness, 4).tolist())


def together(answers, rows, fold):
    """The three experts as one, on the photographs that were kept from the two taught on photographs."""
    names = [f"{expert}:large:mask:plain:{'none' if expert == 'rendered' else fold}" for expert in EXPERTS]
    logits = [answers.by_id(name, "logits") for name in names]
    ids = [i for i, kept in zip(answers.of[names[0]]["ids"], answers.of[names[0]]["kept"]) if kept or fold == "all"]
    share = speaks_of(rows, fold.removeprefix("without-") if fold.startswith("without-") else None)
    # The first of the four views only: asking the mirrored leaf too gained nothing and costs as much again.
    each = np.stack([[logits[e][i][0, : len(MARKS)] for i in ids] for e in range(3)], 1)  # photographs, experts, marks
    mean = (each * share).sum(1)
    voices = np.where(share > 0, each, np.nan)
    leaf = np.mean([[logits[e][i][0, -1] for i in ids] for e in range(3)], 0)
    far = 0
    for name in names[:2]:
        middle, inverse = strangeness_parts(answers.of[name]["taught"].astype(np.float64))
        features = answers.by_id(name, "features")
        d = np.stack([features[i] for i in ids]) - middle
        far = far + 0.5 * np.einsum("ij,jk,ik->i", d, inverse, d)
    return run_of(dict(taught="three experts", size="large", sees="mask", steps=0), fold, ids, mean, agreed(voices), far + NO_LEAF * np.maximum(0, 1 - leaf))


def main():
    a = argparse.ArgumentParser()
    for name in ("data", "experts", "compared", "to"): a.add_argument(f"--{name}", required=True)
    args = a.parse_args()
    rows = photos_of(args.data)
    experts = Answers(*args.experts.split(","))
    folds = sorted({name.split(":")[-1] for name in experts.of if name.startswith("painted")})
    runs = [together(experts, rows, fold) for fold in folds]
    for paths, when in ((args.experts, "experts"), (args.compared, "compared")):
        for path in paths.split(","):
            steps, answers = int(np.load(path)["steps"]), Answers(path)
            for name in sorted(answers.of):
                taught, size, sees, styles, fold = name.split(":")
                if fold == "all": continue
                own = answers.of[name]
                kept = own["kept"]
                # The two cards of one round came to somewhat different numbers of steps; hundreds will do.
                kind = dict(taught=taught if styles == "plain" else f"{taught}, {styles}", size=size, sees=sees, steps=round(steps, -3) if when == "experts" else round(steps, -2))
                said = own["logits"][kept][:, 0, : len(MARKS)].astype(np.float64)
                runs.append(run_of(kind, fold, own["ids"][kept], said, said, np.zeros(int(kept.sum()))))
    share = speaks_of(rows) > 0
    knows = [dict(expert=expert, knows=[mark for mark, own in zip(MARKS, of) if own]) for expert, of in zip(EXPERTS, share)]
    json.dump(dict(marks=MARKS, experts=knows, labels={i: row["labels"] for i, row in rows.items()}, runs=runs), open(args.to, "w"))


if __name__ == "__main__":
    main()

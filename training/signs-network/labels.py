"""Which marks each label of the photographs says are there (1), are not (0), or leaves open (not named).

Ids as in `src/signs/vocabulary.ts`; `spotted`, `curled` and `holes` are the broader marks. `healthy` is none of the others. A label
speaks of one trouble and a leaf may have two, so what often goes along is left open: spots on leaves photographed for
yellowing and on crinkled ones, curl on mildewed ones, holes nearly everywhere.
"""
MARKS = ["yellow-between-veins", "mottled", "spotted", "rust-pustules", "white-powder", "puckered", "curled", "holes", "healthy",
         # No photograph shows these; rendered leaves do.
         "edge-bites", "haloed-spots", "stippled", "pale-trails", "yellow-edges", "brown-edges", "yellow-along-veins", "yellow-patches", "brown-spots",
         "ringed-spots", "bleached-patches", "silver-flecks", "cupped-up", "cupped-down", "twisted-narrow", "shot-holes", "ragged-holes", "veins-left"]
BROADER = {
    "spotted": ["brown-spots", "haloed-spots", "ringed-spots", "spreading-blotches", "rust-pustules"],
    "curled": ["cupped-up", "cupped-down", "twisted-narrow", "puckered"],
    "holes": ["shot-holes", "ragged-holes", "edge-bites", "veins-left"],
}

HEALTHY = {mark: 0 for mark in MARKS if mark != "healthy"} | {"healthy": 1}
LABELS = {
    "bean-uganda/healthy": HEALTHY,
    "blackgram-india/healthy": HEALTHY,
    # The weakest label: pale, nibbled, casts of colour.
    "chilli-india/healthy": {k: v for k, v in HEALTHY.items() if k in MARKS[:9] and k != "holes" or k == "pale-trails"},
    "bean-uganda/angular_leaf_spot": {"spotted": 1, "rust-pustules": 0, "white-powder": 0, "puckered": 0, "curled": 0, "pale-trails": 0, "healthy": 0},
    "bean-uganda/bean_rust": {"spotted": 1, "rust-pustules": 1, "white-powder": 0, "puckered": 0, "curled": 0, "pale-trails": 0, "healthy": 0},
    "blackgram-india/anthracnose": {"spotted": 1, "rust-pustules": 0, "white-powder": 0, "puckered": 0, "pale-trails": 0, "healthy": 0},
    "blackgram-india/leaf_crinckle": {"puckered": 1, "curled": 1, "white-powder": 0, "rust-pustules": 0, "pale-trails": 0, "healthy": 0},
    "blackgram-india/powdery_mildew": {"white-powder": 1, "mottled": 0, "rust-pustules": 0, "puckered": 0, "pale-trails": 0, "healthy": 0},
    "blackgram-india/yellow_mosaic": {"mottled": 1, "white-powder": 0, "yellow-between-veins": 0, "rust-pustules": 0, "pale-trails": 0, "healthy": 0},
    "chilli-india/cercospora": {"spotted": 1, "white-powder": 0, "rust-pustules": 0, "pale-trails": 0, "healthy": 0},
    "chilli-india/murda_complex_mites_trips": {"curled": 1, "white-powder": 0, "mottled": 0, "rust-pustules": 0, "pale-trails": 0, "healthy": 0},
    "chilli-india/nutritional": {"yellow-between-veins": 1, "mottled": 0, "white-powder": 0, "rust-pustules": 0, "pale-trails": 0, "healthy": 0},
    "chilli-india/powdery_mildew": {"white-powder": 1, "mottled": 0, "rust-pustules": 0, "pale-trails": 0, "healthy": 0},
}
# Grown under glass, photographed leaf by leaf on two grounds; pale ones are pale all over, which this network does not report.
PAPAYA = {"white-powder": 0, "mottled": 0, "rust-pustules": 0, "spotted": 0, "pale-trails": 0}
# Flat-bed scans of chewed leaflets; how much is missing stands in the note.
SOYBEAN = {"white-powder": 0, "mottled": 0, "rust-pustules": 0, "puckered": 0, "curled": 0, "yellow-between-veins": 0, "pale-trails": 0}
CHEWED, WHOLE = 0.02, 0.004


def labels_of(row):
    """Marks of one line of `photos.jsonl` as {mark: 0 or 1}; marks left open are missing."""
    if row["set"] == "papaya-spad":
        return PAPAYA | ({"holes": 0, "edge-bites": 0} if row["label"].endswith("white_bg") else {})
    if row["set"] == "soybean-holes":
        gone = float(row["note"].split("damage_fraction=")[1].split()[0])
        return SOYBEAN | ({"holes": 1, "healthy": 0} if gone > CHEWED else {"holes": 0, "edge-bites": 0} if gone < WHOLE else {})
    return LABELS.get(f"{row['set']}/{row['label']}", {})


def labels_of_rendered(marks):
    """The same of a rendered leaf, `marks` being {mark: 0 or 1} of all that was drawn."""
    said = {mark: marks[mark] for mark in MARKS if mark in marks}
    said |= {mark: int(any(marks[part] for part in parts)) for mark, parts in BROADER.items()}
    said |= {"healthy": int(not any(marks.values()))}
    if marks["leaf-dead"]: return {"healthy": 0}
    if marks["whole-colour-golden"]: del said["healthy"]
    return said

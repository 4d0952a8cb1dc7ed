#!/bin/bash
# From the photographs to the shipped network, everything that is compared on the way, in one command, where a graphics card is at hand:
#   training/signs-network/teach.sh FOLDER
# FOLDER takes crops, rendered leaves, answers and weights; what is there already is not made again.
set -euo pipefail
data=$(realpath -m "${1:?name a folder for the data}")
here=$(dirname "$(realpath "$0")")
cd "$here/../.."
[ -f "$data/photos.jsonl" ] || npx tsx training/signs-network/cut-photos.ts "$data"
[ -d "$data/rendered" ] || npx tsx training/rendered-leaves/write-examples.ts 6000 0 "$data/rendered" 224
cd "$here"

sets="without-blackgram-india without-chilli-india without-bean-uganda"
experts=rendered:large:mask:plain:none
for fold in $sets all 0 1 2 3 4; do
  experts="$experts,painted:large:mask:plain:$fold,real:large:mask:plain:$fold"
done
compared=rendered:large:mask:plain:none
for fold in $sets 0 1; do
  for net in all:large:mask all:small:mask all:large:colour both:large:mask painted:large:mask real:large:mask; do
    compared="$compared,$net:plain:$fold"
  done
done
for fold in $sets; do compared="$compared,all:large:mask:mixed:$fold"; done

[ -f "$data/experts.npz" ] || python3 train.py --data "$data" --to "$data" --name experts --steps 3000 --nets "$experts" --keep "$experts"
[ -f "$data/compared.npz" ] || python3 train.py --data "$data" --to "$data" --name compared --steps 1700 --nets "$compared"
python3 answers.py --data "$data" --experts "$data/experts.npz" --compared "$data/compared.npz" --to "$data/answers.json"
npx tsx evaluate.ts "$data/answers.json" "$data/photos.jsonl"
npx tsx ablate.ts "$data/answers.json" "$data/photos.jsonl"
python3 export.py --data "$data" --experts "$data/experts.npz" --weights "$data/experts.pt" --to "$data/shipped"
npx tsx ship.ts "$data/shipped"

// Small procedure files that several tests start from.

/** The smallest file that uses people, room, products and steps. */
export const SMALL = `doffline: 1
title: Gown and gloves
kind: doffing
version: "1"
invented: true
people:
  wearer:
    wears: [gown, gloves]
    leaves-bare: [scalp, wrist]
  assistant: {hand: left}
room:
  zones: {patient-room: patient, doffing-area: doffing, clean-side: clean}
  fixtures: {bin: {kind: bin, zone: doffing-area}}
products: [alcohol-hand-rub]
steps:
  - {do: remove, item: [gown, gloves]}
  - {id: rub, do: sanitise, with: alcohol-hand-rub}
  - {who: assistant, do: move, to: clean-side}
`;

/** Every key of the format, in canonical form. */
export const FULL = `doffline: 1
title: "Full set: everything"
kind: doffing
version: "1.10"
invented: true
about: |-
  First line.

  Third line, Größe 7½.
source:
  title: A document
  publisher: A body
  year: "2023"
  where: page 4
  seen: the steps
  memory: the order of two steps
  interpreted: where the bin stands
agents: [enveloped, non-enveloped]
donning: full-donning.yaml
people:
  anna:
    role: wearer
    wears: [inner-gloves, gown, n95-respirator, outer-gloves]
    underneath: [scrubs]
    starts: doffing-area
    hand: left
    leaves-bare: [scalp, wrist, hand.left]
  assistant:
    wears: [gloves]
room:
  zones: {patient-room: patient, doffing-area: doffing, clean-side: clean}
  fixtures:
    clean-chair: {kind: chair, zone: doffing-area, clean: true}
    mat: {kind: mat, zone: doffing-area, product: chlorine-0.5}
    door: {kind: door, zone: clean-side, worked: elbow}
    clean-side-floor: {kind: floor, zone: clean-side, clean: false}
products: [alcohol-hand-rub, chlorine-0.5]
start:
  - {surface: anna.outer-gloves.left.outside, state: uncontaminated}
  - {surface: room.door.handle, state: maybe, reason: not cleaned since}
policy: {credit-spraying: true, observer: {misses: hep.checker.active, dependence: high}}
steps:
  - {do: remove, item: outer-gloves, side: left, technique: peel-one}
  - {id: after, do: sanitise, on: door, with: alcohol-hand-rub}
  - {who: assistant, do: unfasten, item: gown, part: neck-tie, of: anna}
  - do: remove
    item: [gown, inner-gloves]
    technique: together-with-gloves
    helper: assistant
    note: Away from the body.
  - {do: touch, place: hand.left}
  - {do: move, to: clean-side}
accepted:
  - finding: practice.hygiene-between-items
    step: after
    surface: anna.face
    reason: The unit has no room for it.
    by: infection-prevention lead
    date: 2026-01-31
    review: 2026-07-31
`;

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

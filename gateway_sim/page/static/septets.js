"use strict";
// How a text is counted while it is written: 3GPP TS 23.038 (alphabets) and TS 23.040 (parts).

const DEFAULT_ALPHABET =
  "@£$¥èéùìòÇ\nØø\rÅåΔ_ΦΓΛΩΠΨΣΘΞÆæßÉ !\"#¤%&'()*+,-./0123456789:;<=>?" +
  "¡ABCDEFGHIJKLMNOPQRSTUVWXYZÄÖÑÜ§¿abcdefghijklmnopqrstuvwxyzäöñüà";
const EXTENSION = "\f^{}\\[~]|€"; // two septets each

function countText(text) {
  const characters = [...text];
  const gsm = characters.every((c) => DEFAULT_ALPHABET.includes(c) || EXTENSION.includes(c));
  const width = (c) => (gsm ? (EXTENSION.includes(c) ? 2 : 1) : c.length);
  const [alone, joined] = gsm ? [160, 153] : [70, 67];
  const units = characters.reduce((sum, c) => sum + width(c), 0);
  let segments = 1;
  if (units > alone) {
    let used = 0;
    for (const c of characters) {
      if (used + width(c) > joined) {
        segments += 1;
        used = 0;
      }
      used += width(c);
    }
  }
  return { gsm, units, segments, room: segments === 1 ? alone : segments * joined };
}

function sayCount(text) {
  const { gsm, units, segments, room } = countText(text);
  const unit = gsm ? "septets" : "UCS-2 characters";
  return `${units} of ${room} ${unit}, ${saySegments(segments)}`;
}

function saySegments(segments) {
  return segments === 1 ? "1 segment" : `${segments} segments`;
}

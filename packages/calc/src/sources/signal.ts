import { sourceTable } from "./source.js";

export const signalSources = sourceTable({
  "iec-11801": {
    document: "ISO/IEC 11801",
    says: "a channel is at most 100 m: 90 m of fixed cable and 10 m of cords",
    basis: "published",
  },
  "iec-11801-2002": {
    document: "ISO/IEC 11801",
    edition: "2002",
    says: "cords may lose up to half as much again as fixed cable",
    basis: "published",
  },
  "tia-568-b.1": {
    document: "ANSI/TIA/EIA-568-B.1",
    clause: "open office cabling",
    says: "24 AWG stranded cords lose a fifth more than fixed cable",
    basis: "published",
  },
  "ieee-802.3": {
    document: "IEEE 802.3",
    clause: "framing",
    says: "a frame costs 38 bytes beside its payload: preamble 8, header 14, check 4, gap 12",
    basis: "published",
  },
  "cta-861": { document: "CTA-861", says: "timings of the standard video formats", basis: "published" },
  "vesa-cvt-1.1": {
    document: "VESA CVT",
    edition: "1.1 (2003)",
    says: "coordinated video timings, standard and reduced blanking; minimum back porch as common programs take it",
    basis: "published",
  },
  "vesa-cvt-1.2": {
    document: "VESA CVT",
    edition: "1.2 (2013)",
    says: "reduced blanking version 2: 80 pixels of blanking, clock in steps of 1 kHz",
    basis: "published",
  },
  "dvi-1.0": { document: "DVI", edition: "1.0", says: "single link 25 to 165 MHz", basis: "published" },
  "hdmi-1.3": {
    document: "HDMI",
    edition: "1.3",
    says: "TMDS from 25 MHz up to 340 MHz; deep colour raises the clock by bits ÷ 24",
    basis: "published",
  },
  "hdmi-1.0": { document: "HDMI", edition: "1.0 to 1.2", says: "TMDS from 25 MHz up to 165 MHz", basis: "published" },
  "hdmi-2.0": { document: "HDMI", edition: "2.0", says: "up to 600 million characters a second", basis: "memory" },
  "displayport-1.2": {
    document: "VESA DisplayPort",
    edition: "1.2",
    says: "four lanes of 5.4 Gb/s coded 8 in 10: 17.28 Gb/s of payload",
    basis: "memory",
  },
  "displayport-1.4": {
    document: "VESA DisplayPort",
    edition: "1.4",
    says: "four lanes of 8.1 Gb/s coded 8 in 10: 25.92 Gb/s of payload",
    basis: "memory",
  },
  "smpte-st-259": { document: "SMPTE ST 259", says: "SD-SDI, 270 Mb/s", basis: "published" },
  "smpte-st-292": {
    document: "SMPTE ST 292-1",
    says: "HD-SDI, 1.485 Gb/s; design loss to 20 dB at half the clock",
    basis: "published",
  },
  "smpte-st-424": { document: "SMPTE ST 424", says: "3G-SDI, 2.97 Gb/s", basis: "published" },
  "smpte-st-2081": { document: "SMPTE ST 2081", says: "6G-SDI, 5.94 Gb/s", basis: "memory" },
  "smpte-st-2082": { document: "SMPTE ST 2082", says: "12G-SDI, 11.88 Gb/s", basis: "published" },
  "lampen-12g": {
    document: "S. Lampen, 12G-SDI (I)",
    says: "RG-6-class digital coax by the 20 dB rule: HD 113 m, 3G 78 m",
    basis: "published",
  },
  "acuity-20-20": {
    document: "20/20 visual acuity",
    says: "the eye parts two points one arc-minute apart: 3438 times their distance",
    basis: "published",
  },
  "nureg-0700": {
    document: "NUREG-0700",
    edition: "revision 2",
    clause: "1.3.1-4",
    says: "character height = 6.283 × distance × arc-minutes ÷ 21600; 16′ least, 20′ to 22′ preferred",
    basis: "published",
  },
  "iso-9241-303": {
    document: "ISO 9241-303",
    edition: "2011",
    says: "characters of at least 16 arc-minutes, 20 to 22 preferred",
    basis: "published",
  },
  "ada-703.5.5": {
    document: "2010 ADA Standards",
    clause: "703.5.5",
    says: "least character height of fixed signs by height above the floor and distance",
    basis: "published",
  },
});

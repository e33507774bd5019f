import { COMPONENTS } from "../../signal/carry.js";
import { RG6_LENGTHS, SDI_LOSS } from "../../signal/coax.js";
import { LINEAR_BELOW } from "../../signal/contrast.js";
import { copperVideoRows } from "../../signal/copper-video.js";
import { CHANNEL, CORD_MOST, cordBudgets } from "../../signal/cords.js";
import { ctaFormats } from "../../signal/cta.js";
import { CELL, FRONT_PORCH, LEAST_BACK_PORCH, QUARTER_MEGAHERTZ } from "../../signal/cvt.js";
import { FRAME_BYTES, FRAME_OVERHEAD, FRAME_PAYLOAD } from "../../signal/frame.js";
import { fixedRates, links, TMDS_FLOOR } from "../../signal/links.js";
import { CALIFORNIA_ROWS } from "../../signal/message-signs.js";
import { STATED_AT } from "../../signal/port.js";
import { sdiRasters, sdiRates } from "../../signal/sdi.js";
import { adaRows } from "../../signal/signs.js";
import { CHARACTER_ADVANCE, CHARACTER_ANGLE } from "../../signal/text.js";
import { METRES_PER_MM } from "../../signal/viewing.js";
import { DETAILED, LINE_RATE_LEAST } from "../../signal/widened.js";
import type { RegisterTable } from "../table.js";

export const signalTables: readonly RegisterTable[] = [
  {
    id: "signal.channel",
    title: "Lengths of a twisted-pair channel",
    holds: "m",
    sources: ["iec-11801"],
    data: CHANNEL,
  },
  {
    id: "signal.cord-most",
    title: "Longest work-area cord",
    holds: "m",
    sources: ["tia-568-b.1", "iec-11801"],
    data: CORD_MOST,
  },
  {
    id: "signal.cord-budgets",
    title: "Loss budgets of cords",
    holds: "budget in m of fixed cable, extra loss of the cords",
    sources: ["tia-568-b.1"],
    data: cordBudgets,
  },
  {
    id: "signal.frame-bytes",
    title: "Bytes a frame costs beside its payload",
    holds: "bytes",
    sources: ["ieee-802.3"],
    data: { ...FRAME_BYTES, overhead: FRAME_OVERHEAD, payload: FRAME_PAYLOAD },
  },
  {
    id: "signal.stated-at",
    title: "Rate and depth a maker's pixel figure is stated at",
    holds: "Hz and bits of a pixel",
    sources: ["practice"],
    data: STATED_AT,
  },
  {
    id: "signal.formats",
    title: "Progressive video formats",
    holds: "format, pixels and lines visible and in all, clock in kHz",
    sources: ["cta-861"],
    data: ctaFormats,
  },
  {
    id: "signal.coordinated-timings",
    title: "Steps of coordinated timings",
    holds: "least vertical back porch and front porch in lines, cell in pixels, step of the clock in Hz",
    sources: ["vesa-cvt-1.1"],
    data: { LEAST_BACK_PORCH, FRONT_PORCH, CELL, QUARTER_MEGAHERTZ },
  },
  {
    id: "signal.tmds-floor",
    title: "Lowest TMDS clock",
    holds: "Hz",
    sources: ["dvi-1.0", "hdmi-1.3"],
    data: TMDS_FLOOR,
  },
  {
    id: "signal.links",
    title: "Bounds of picture links",
    holds: "highest clock in Hz, payload or rate in bit/s",
    sources: ["dvi-1.0"],
    data: links,
  },
  {
    id: "signal.fixed-rates",
    title: "Fixed rates of HDMI 2.1",
    holds: "Gb/s over all lanes",
    sources: ["hdmi-2.1", "hdmi-2.1-correction"],
    data: fixedRates,
  },
  {
    id: "signal.components",
    title: "Components sent for each pixel",
    holds: "number, on average",
    sources: ["arithmetic"],
    data: COMPONENTS,
  },
  {
    id: "signal.sdi-rasters",
    title: "Rasters of serial digital links",
    holds: "least link rate in bit/s by raster, to 30 Hz and above",
    sources: [],
    data: sdiRasters,
  },
  {
    id: "signal.sdi-rates",
    title: "Frame rates of serial digital links",
    holds: "Hz; those of 24, 30 and 60 also divided by 1.001",
    sources: ["smpte-st-274", "smpte-st-296"],
    data: sdiRates,
  },
  {
    id: "signal.sdi-loss",
    title: "Loss an SDI receiver is designed for",
    holds: "dB at half the clock",
    sources: ["smpte-st-292", "smpte-st-2081"],
    data: SDI_LOSS,
  },
  {
    id: "signal.coax-lengths",
    title: "Lengths of RG-6-class coax by the 20 dB rule",
    holds: "m",
    sources: ["lampen-12g"],
    data: RG6_LENGTHS,
  },
  {
    id: "signal.copper-video",
    title: "Passive copper HDMI by TMDS clock",
    holds: "m, up to a clock in Hz",
    sources: ["practice"],
    data: copperVideoRows,
  },
  {
    id: "signal.detailed-timing",
    title: "What a detailed timing holds",
    holds: "step of the clock in Hz, most blanking in pixels or lines, least blanking of a line in pixels",
    sources: ["detailed-timing"],
    data: DETAILED,
  },
  {
    id: "signal.line-rate-least",
    title: "Least line rate of widened blanking",
    holds: "Hz",
    sources: ["practice"],
    data: LINE_RATE_LEAST,
  },
  {
    id: "viewing.linear-below",
    title: "Share of full drive up to which a colour component is linear",
    holds: "share",
    sources: ["wcag-2.2"],
    data: LINEAR_BELOW,
  },
  {
    id: "viewing.character-advance",
    title: "Width of a character",
    holds: "heights of a capital",
    sources: ["core-font-metrics", "practice"],
    data: CHARACTER_ADVANCE,
  },
  {
    id: "viewing.character-angle",
    title: "Angle a character fills",
    holds: "degrees",
    sources: ["iso-9241-303", "nureg-0700"],
    data: CHARACTER_ANGLE,
  },
  {
    id: "viewing.metres-per-mm",
    title: "Least viewing distance by practice",
    holds: "m for each millimetre of pitch",
    sources: ["practice"],
    data: METRES_PER_MM,
  },
  {
    id: "viewing.fixed-signs",
    title: "Least character height of fixed signs",
    holds: "in, by height of the baseline and near distance in inches",
    sources: ["ada-703.5.5"],
    data: adaRows,
  },
  {
    id: "viewing.message-signs",
    title: "Least character height of low-resolution message signs",
    holds: "in, by height of the baseline in inches and near distance in feet",
    sources: ["california-11b-703.8.4"],
    data: CALIFORNIA_ROWS,
  },
];

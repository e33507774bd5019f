import type { SourceId } from "../sources/index.js";
import type { Connector, Retention } from "./connector.js";

const signal = (
  id: string,
  title: string,
  standard: string,
  retention: Retention,
  source: SourceId,
  mates: readonly string[] = [id],
): Connector => ({
  id,
  title,
  standard,
  carries: "signal",
  retention,
  mates,
  underLoad: true,
  source,
});

/** An ordinary 8-way plug goes into a locking-shell receptacle, but is then held by its own latch alone. */
export const signalConnectors: readonly Connector[] = [
  signal("rj45", "8-way modular (8P8C)", "IEC 60603-7", "latch", "iec-60603-7", ["rj45", "rj45-locking"]),
  signal("rj45-locking", "8-way modular in a locking shell", "IEC 61076-3", "latch", "iec-61076-3", [
    "rj45-locking",
    "rj45",
  ]),
  signal("hdmi-a", "HDMI type A", "HDMI", "friction", "hdmi-connector"),
  signal("displayport", "DisplayPort", "VESA DisplayPort", "latch", "displayport-connector"),
  signal("mini-displayport", "Mini DisplayPort", "VESA DisplayPort", "friction", "displayport-connector"),
  signal("dvi", "DVI", "DVI 1.0", "screw", "dvi-1.0-connector"),
  signal("vga", "15-way D-subminiature", "practice", "screw", "practice"),
  signal("bnc", "BNC", "IEC 61169-8", "bayonet", "iec-61169-8"),
  signal("usb-a", "USB type A", "USB", "friction", "usb-connector"),
  signal("usb-b", "USB type B", "USB", "friction", "usb-connector"),
  signal("usb-c", "USB type C", "USB", "friction", "usb-connector"),
  signal("lc", "LC, optical", "IEC 61754-20", "latch", "iec-61754"),
  signal("sc", "SC, optical", "IEC 61754-4", "latch", "iec-61754"),
  signal("st", "ST, optical", "IEC 61754-2", "bayonet", "iec-61754"),
  signal("jack-3.5", "3.5 mm jack", "IEC 60603-11", "friction", "iec-60603-11"),
  signal("xlr-3", "XLR, 3 poles", "IEC 61076-2-103", "latch", "iec-61076-2-103"),
  signal("xlr-5", "XLR, 5 poles", "IEC 61076-2-103", "latch", "iec-61076-2-103"),
];

/** Microsoft, "Naming Files, Paths, and Namespaces": names of devices, whatever ending they have. From memory. */
const DEVICE = /^(?:con|prn|aux|nul|com\d|lpt\d)(?:\.|$)/iu;

/** Whether a name cannot be that of a file on Windows: what lies here is checked out and copied there, too. */
export const isDevice = (name: string): boolean => DEVICE.test(name);

export * from "./ampacity/ampacity.js";
export { type BuildingRow, buildingRow, buildingRows } from "./ampacity/building.js";
export {
  buildingAmpacity,
  columnOf,
  smallConductorBreaker,
  type WireMarks,
  type WireService,
  wireAmpacity,
} from "./ampacity/building-wire.js";
export { CORD_USES, type CordUse, type CordUseRow, cordUse } from "./ampacity/cord-use.js";
export { type CordRow, cordRows } from "./ampacity/cords.js";
export { ambientFactor, countFactor, type TemperatureColumn } from "./ampacity/factors.js";
export { type IecRow, iecRows, LAID, type Laid } from "./ampacity/iec-building.js";
export { iecAmbient, iecGrouping } from "./ampacity/iec-factors.js";
export { type IecService, iecWireAmpacity } from "./ampacity/iec-wire.js";
export { type MetricCordRow, metricCordAmpacity, metricCordRows } from "./ampacity/metric-cords.js";
export { type PortableRow, portableRows } from "./ampacity/portable.js";
export { annexGDrop, annexGLimit, annexGLimits, dropByMillivolts, REACTANCE, RESISTIVITY } from "./annex-g.js";
export { nextBreaker, standardBreakers } from "./breakers.js";
export { powerBySize } from "./by-size.js";
export { ALPHA_75, type GaugeRow, gaugeAt, gaugeRow, gaugeRows } from "./conductors/copper-awg.js";
export {
  ALPHA_20,
  correctionTo20,
  type MetricRow,
  metricAt,
  metricRow,
  metricRows,
} from "./conductors/copper-metric.js";
export { conductorResistance, gaugeOf, type Strands } from "./conductors/resistance.js";
export { continuousRating, continuousShare, isContinuous, overcurrentNeeded, type Practice } from "./continuous.js";
export {
  COPPER_DENSITY,
  CORD_CORES,
  type CordMassRow,
  copperMass,
  cordMass,
  cordMassRows,
  LEAST_COPPER,
} from "./cord-mass.js";
export { segmentDrop, segmentDropThreePhase, sharedLineDrop } from "./drop.js";
export { dropShare, endVoltage, farEndDrop } from "./far-end.js";
export { C_MIN, faultLoop, faultLoopMost, OPENS_AT } from "./fault-loop.js";
export { generatorGives, generatorLeg } from "./generator.js";
export { BTU_PER_TON, coolingTons, heat, wattsToBtu } from "./heat.js";
export { curveRides, inrush, inrushMultiple, peakRidden, TRIP_CURVES, type TripCurve } from "./inrush.js";
export { circularMils, dropByK, K } from "./k-method.js";
export {
  CLASS_A,
  CORD_LEAKAGE,
  classA,
  classATime,
  LEAKAGE_SHARE,
  leakageAllowed,
  RESIDUAL_MOST,
  residualDevice,
} from "./leakage.js";
export { type LineToLine, legCurrent, legCurrents, legImbalance, type Phasor, phasorDifference } from "./legs.js";
export { apparentPower, circuitLoad, loadCurrent, panelsThatFit, threePhaseCurrent } from "./load.js";
export * from "./neutral.js";
export {
  receptacleAllowed,
  receptacleLoad,
  receptacleLoads,
  receptacleRatings,
  sharedCircuitShare,
} from "./receptacles.js";
export { equalTapsDrop, runDrops, type Segment, segmentCurrents, segmentDrops } from "./run.js";
export { PLUG_FUSE_MOST, RING, SOCKET_CIRCUITS, type SocketLayout, socketAllows } from "./sockets.js";

// Generated from the folders of the rules; run `npm run build` after adding one.
import type { Rule } from "@plumbmark/kit";
import connectorsActivesOverhead from "./connectors/actives-overhead/rule.js";
import connectorsLockingOverhead from "./connectors/locking-overhead/rule.js";
import connectorsMate from "./connectors/mate/rule.js";
import dataChainLength from "./data/chain-length/rule.js";
import dataFedOnce from "./data/fed-once/rule.js";
import dataFeedReach from "./data/feed-reach/rule.js";
import dataHopLength from "./data/hop-length/rule.js";
import dataJumperReach from "./data/jumper-reach/rule.js";
import dataLoop from "./data/loop/rule.js";
import dataNeighbours from "./data/neighbours/rule.js";
import dataPortLoad from "./data/port-load/rule.js";
import dataProcessorLoad from "./data/processor-load/rule.js";
import dataReceivingCards from "./data/receiving-cards/rule.js";
import dataSharedProcessor from "./data/shared-processor/rule.js";
import documentCautions from "./document/cautions/rule.js";
import documentDescribed from "./document/described/rule.js";
import documentExposure from "./document/exposure/rule.js";
import documentFrontMatter from "./document/front-matter/rule.js";
import documentIdentity from "./document/identity/rule.js";
import documentLinks from "./document/links/rule.js";
import documentParts from "./document/parts/rule.js";
import documentPlausible from "./document/plausible/rule.js";
import documentQuotedValues from "./document/quoted-values/rule.js";
import documentSections from "./document/sections/rule.js";
import documentSignOff from "./document/sign-off/rule.js";
import documentTasks from "./document/tasks/rule.js";
import documentWaivers from "./document/waivers/rule.js";
import panelsBatch from "./panels/batch/rule.js";
import panelsMixed from "./panels/mixed/rule.js";
import panelsSpares from "./panels/spares/rule.js";
import panelsTurned from "./panels/turned/rule.js";
import pictureCarried from "./picture/carried/rule.js";
import pictureJoined from "./picture/joined/rule.js";
import pictureLinkLength from "./picture/link-length/rule.js";
import picturePlaced from "./picture/placed/rule.js";
import powerCircuitLoad from "./power/circuit-load/rule.js";
import powerControl from "./power/control/rule.js";
import powerCordAmpacity from "./power/cord-ampacity/rule.js";
import powerCordType from "./power/cord-type/rule.js";
import powerDevices from "./power/devices/rule.js";
import powerDisconnection from "./power/disconnection/rule.js";
import powerFedOnce from "./power/fed-once/rule.js";
import powerFeedReach from "./power/feed-reach/rule.js";
import powerGenerator from "./power/generator/rule.js";
import powerGeneratorClass from "./power/generator-class/rule.js";
import powerHeat from "./power/heat/rule.js";
import powerInrush from "./power/inrush/rule.js";
import powerLeakage from "./power/leakage/rule.js";
import powerLegBalance from "./power/leg-balance/rule.js";
import powerNeutral from "./power/neutral/rule.js";
import powerPlugFits from "./power/plug-fits/rule.js";
import powerResidual from "./power/residual/rule.js";
import powerResidualType from "./power/residual-type/rule.js";
import powerRunCurrent from "./power/run-current/rule.js";
import powerSharedCircuits from "./power/shared-circuits/rule.js";
import powerSupplyRange from "./power/supply-range/rule.js";
import powerSurplus from "./power/surplus/rule.js";
import powerVoltageDrop from "./power/voltage-drop/rule.js";
import riggingAngularPull from "./rigging/angular-pull/rule.js";
import riggingAttachment from "./rigging/attachment/rule.js";
import riggingBarCovers from "./rigging/bar-covers/rule.js";
import riggingBarDeflection from "./rigging/bar-deflection/rule.js";
import riggingBarStrength from "./rigging/bar-strength/rule.js";
import riggingBridleAngle from "./rigging/bridle-angle/rule.js";
import riggingColumnDepth from "./rigging/column-depth/rule.js";
import riggingDeckLoad from "./rigging/deck-load/rule.js";
import riggingDesignFactor from "./rigging/design-factor/rule.js";
import riggingFit from "./rigging/fit/rule.js";
import riggingFixings from "./rigging/fixings/rule.js";
import riggingHeadRoom from "./rigging/head-room/rule.js";
import riggingHoist from "./rigging/hoist/rule.js";
import riggingKeptClear from "./rigging/kept-clear/rule.js";
import riggingLetter from "./rigging/letter/rule.js";
import riggingLift from "./rigging/lift/rule.js";
import riggingLostHang from "./rigging/lost-hang/rule.js";
import riggingMarked from "./rigging/marked/rule.js";
import riggingPointLoad from "./rigging/point-load/rule.js";
import riggingRatedHardware from "./rigging/rated-hardware/rule.js";
import riggingReach from "./rigging/reach/rule.js";
import riggingRopeClips from "./rigging/rope-clips/rule.js";
import riggingRopeFigures from "./rigging/rope-figures/rule.js";
import riggingSecondary from "./rigging/secondary/rule.js";
import riggingSharedStructure from "./rigging/shared-structure/rule.js";
import riggingSlackHang from "./rigging/slack-hang/rule.js";
import riggingStackHeight from "./rigging/stack-height/rule.js";
import riggingStackSlides from "./rigging/stack-slides/rule.js";
import riggingStackStability from "./rigging/stack-stability/rule.js";
import riggingStandsOn from "./rigging/stands-on/rule.js";
import riggingSuspendedWeight from "./rigging/suspended-weight/rule.js";
import stockInspected from "./stock/inspected/rule.js";
import stockPromisedTwice from "./stock/promised-twice/rule.js";
import venueAgrees from "./venue/agrees/rule.js";
import venueSurveyAge from "./venue/survey-age/rule.js";
import venueWayIn from "./venue/way-in/rule.js";
import viewingCamera from "./viewing/camera/rule.js";
import viewingDepth from "./viewing/depth/rule.js";
import viewingDimming from "./viewing/dimming/rule.js";
import viewingGlare from "./viewing/glare/rule.js";
import viewingPitch from "./viewing/pitch/rule.js";
import viewingText from "./viewing/text/rule.js";

/** The built-in rules, by topic and name. */
export const rules: readonly Rule[] = [
  connectorsActivesOverhead,
  connectorsLockingOverhead,
  connectorsMate,
  dataChainLength,
  dataFedOnce,
  dataFeedReach,
  dataHopLength,
  dataJumperReach,
  dataLoop,
  dataNeighbours,
  dataPortLoad,
  dataProcessorLoad,
  dataReceivingCards,
  dataSharedProcessor,
  documentCautions,
  documentDescribed,
  documentExposure,
  documentFrontMatter,
  documentIdentity,
  documentLinks,
  documentParts,
  documentPlausible,
  documentQuotedValues,
  documentSections,
  documentSignOff,
  documentTasks,
  documentWaivers,
  panelsBatch,
  panelsMixed,
  panelsSpares,
  panelsTurned,
  pictureCarried,
  pictureJoined,
  pictureLinkLength,
  picturePlaced,
  powerCircuitLoad,
  powerControl,
  powerCordAmpacity,
  powerCordType,
  powerDevices,
  powerDisconnection,
  powerFedOnce,
  powerFeedReach,
  powerGenerator,
  powerGeneratorClass,
  powerHeat,
  powerInrush,
  powerLeakage,
  powerLegBalance,
  powerNeutral,
  powerPlugFits,
  powerResidual,
  powerResidualType,
  powerRunCurrent,
  powerSharedCircuits,
  powerSupplyRange,
  powerSurplus,
  powerVoltageDrop,
  riggingAngularPull,
  riggingAttachment,
  riggingBarCovers,
  riggingBarDeflection,
  riggingBarStrength,
  riggingBridleAngle,
  riggingColumnDepth,
  riggingDeckLoad,
  riggingDesignFactor,
  riggingFit,
  riggingFixings,
  riggingHeadRoom,
  riggingHoist,
  riggingKeptClear,
  riggingLetter,
  riggingLift,
  riggingLostHang,
  riggingMarked,
  riggingPointLoad,
  riggingRatedHardware,
  riggingReach,
  riggingRopeClips,
  riggingRopeFigures,
  riggingSecondary,
  riggingSharedStructure,
  riggingSlackHang,
  riggingStackHeight,
  riggingStackSlides,
  riggingStackStability,
  riggingStandsOn,
  riggingSuspendedWeight,
  stockInspected,
  stockPromisedTwice,
  venueAgrees,
  venueSurveyAge,
  venueWayIn,
  viewingCamera,
  viewingDepth,
  viewingDimming,
  viewingGlare,
  viewingPitch,
  viewingText,
];

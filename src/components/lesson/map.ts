import Caution from '#components/Caution.astro';
import MarginNote from '#components/MarginNote.astro';
import Source from '#components/Source.astro';
import UnitsNote from '#components/UnitsNote.astro';
import Ask from '#widgets/Ask/Ask.astro';
import BillArea from '#widgets/BillArea/BillArea.astro';
import BoreVelocity from '#widgets/BoreVelocity/BoreVelocity.astro';
import CapstoneSteps from '#widgets/CapstoneSteps/CapstoneSteps.astro';
import PadDrawing from '#widgets/CapstoneSteps/PadDrawing.astro';
import Check from '#widgets/Check/Check.astro';
import CircuitBuilder from '#widgets/CircuitBuilder/CircuitBuilder.astro';
import FilterWeeks from '#widgets/FilterWeeks/FilterWeeks.astro';
import FilterYears from '#widgets/FilterYears/FilterYears.astro';
import FlowPowerSpeed from '#widgets/FlowPowerSpeed/FlowPowerSpeed.astro';
import GaugeHead from '#widgets/GaugeHead/GaugeHead.astro';
import HourHunt from '#widgets/HourHunt/HourHunt.astro';
import MixingParcels from '#widgets/MixingParcels/MixingParcels.astro';
import MoodyPicture from '#widgets/MoodyPicture/MoodyPicture.astro';
import NeedsLadder from '#widgets/NeedsLadder/NeedsLadder.astro';
import ReadingBand from '#widgets/ReadingBand/ReadingBand.astro';
import SuctionLadder from '#widgets/SuctionLadder/SuctionLadder.astro';
import ThreeBlockDay from '#widgets/ThreeBlockDay/ThreeBlockDay.astro';
import ValveWalk from '#widgets/ValveWalk/ValveWalk.astro';
import WaterPerKilowattHour from '#widgets/WaterPerKilowattHour/WaterPerKilowattHour.astro';
import YearBars from '#widgets/YearBars/YearBars.astro';
import Formula from './Formula.astro';
import InShort from './InShort.astro';
import ReadingSheet from './ReadingSheet.astro';
import Step from './Step.astro';
import Value from './Value.astro';
import Wide from './Wide.astro';
import Worked from './Worked.astro';

/**
 * The tags a lesson may use, each an Astro wrapper that takes plain data.
 *
 * A new tag is one line here; lessons themselves import nothing.
 */
export const lessonTags = {
  Ask,
  BillArea,
  BoreVelocity,
  CapstoneSteps,
  Caution,
  Check,
  CircuitBuilder,
  FilterWeeks,
  FilterYears,
  FlowPowerSpeed,
  Formula,
  GaugeHead,
  HourHunt,
  InShort,
  MarginNote,
  MixingParcels,
  MoodyPicture,
  PadDrawing,
  ReadingBand,
  ReadingSheet,
  Source,
  NeedsLadder,
  Step,
  SuctionLadder,
  ThreeBlockDay,
  UnitsNote,
  Value,
  ValveWalk,
  WaterPerKilowattHour,
  Wide,
  Worked,
  YearBars,
};

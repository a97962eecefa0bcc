import Ask from '#course/Ask/Ask.astro';
import CapstoneSteps from '#course/CapstoneSteps/CapstoneSteps.astro';
import PadDrawing from '#course/CapstoneSteps/PadDrawing.astro';
import Check from '#course/Check/Check.astro';
import BillArea from '#explorables/BillArea/BillArea.astro';
import BoreVelocity from '#explorables/BoreVelocity/BoreVelocity.astro';
import CircuitBuilder from '#explorables/CircuitBuilder/CircuitBuilder.astro';
import FilterWeeks from '#explorables/FilterWeeks/FilterWeeks.astro';
import FilterYears from '#explorables/FilterYears/FilterYears.astro';
import FlowPowerSpeed from '#explorables/FlowPowerSpeed/FlowPowerSpeed.astro';
import GaugeHead from '#explorables/GaugeHead/GaugeHead.astro';
import HourHunt from '#explorables/HourHunt/HourHunt.astro';
import MixingParcels from '#explorables/MixingParcels/MixingParcels.astro';
import MoodyPicture from '#explorables/MoodyPicture/MoodyPicture.astro';
import NeedsLadder from '#explorables/NeedsLadder/NeedsLadder.astro';
import ReadingBand from '#explorables/ReadingBand/ReadingBand.astro';
import SuctionLadder from '#explorables/SuctionLadder/SuctionLadder.astro';
import ThreeBlockDay from '#explorables/ThreeBlockDay/ThreeBlockDay.astro';
import ValveWalk from '#explorables/ValveWalk/ValveWalk.astro';
import WaterPerKilowattHour from '#explorables/WaterPerKilowattHour/WaterPerKilowattHour.astro';
import YearBars from '#explorables/YearBars/YearBars.astro';
import Caution from '#ui/page/Caution.astro';
import MarginNote from '#ui/page/MarginNote.astro';
import Source from '#ui/page/Source.astro';
import UnitsNote from '#ui/page/UnitsNote.astro';
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

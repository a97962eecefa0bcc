/** Puts in a value of the problem by its name, in the reader's unit where it has one. */
export type Say = (name: string) => string;

export type Sentences = Readonly<Record<string, (say: Say) => string>>;

/** What can be wrong with a document as well as with what it says. */
export const sharedSentences = {
  wrongType: (say) => `This must be ${say('expected')}.`,
  sameId: (say) => `The id “${say('id')}” is used twice; give each entry an id of its own.`,
} as const satisfies Sentences;

/** Pool, plumbing and pump. */
export const padSentences = {
  volumeMissing: () => 'The volume of the pool is missing; type it, or describe the shape.',
  poolSize: () => 'This size is missing or 0; the volume needs it.',
  poolWidth: () => 'The width is more than the length; it must be the length or less.',
  poolCorners: () =>
    'This outline cannot be closed; give at least 3 corners, in order, with no two sides crossing.',
  poolEnds: () =>
    'The round ends do not fit; the length must be more than the greater diameter, and a bend must ' +
    'be wide enough to touch both ends.',
  poolStations: () =>
    'The depths must start at distance 0, go on in order and end at the length of the pool.',
  partSize: () =>
    'This part has no pipe size yet, so the answers leave it out; choose a size or type its bore.',
  partBore: (say) =>
    `A bore of ${say('found')} is out of range; it must be ${say('least')} to ${say('greatest')}.`,
  unknownSize: (say) =>
    `“${say('found')}” is not in the pipe table; choose a size from it or type the bore.`,
  partLength: () => 'This run has no length yet, so the answers leave it out; type its length.',
  roughPipe: (say) =>
    `This wall is too rough for the bore; its roughness must be ${say('greatest')} or less.`,
  fittingK: () =>
    'This fitting has no loss coefficient yet, so the answers leave it out; type its K.',
  equipmentPoint: () =>
    'The answers leave this out; type the head it loses and the flow that goes with it.',
  filterClean: (say) =>
    'Give the head it loses clean too; until then it is taken to rise evenly from none to ' +
    `${say('dirty')} when due.`,
  filterEnds: () => 'The dirty head is below the clean head; it must be the clean head or more.',
  branchEmpty: () =>
    'This way has no parts yet, so the answers leave it out; add its pipe and fittings.',
  referenceSpeed: () =>
    'The speed the curve or nameplate is stated at is missing; type the rated speed in rpm.',
  speedOrder: (say) => `The slowest speed is above the fastest; it must be ${say('top')} or less.`,
  speedStepLarge: (say) =>
    `A step of ${say('found')} is more than the range from ${say('least')} to ${say('top')}, so ` +
    'only those two can be set; type a smaller step.',
  speedStepSmall: (say) =>
    `A step of less than ${say('least')} is finer than a pump can be set; ${say('least')} is taken instead.`,
  speedRange: (say) =>
    `This speed is too far from the rated one; it must be ${say('least')} to ${say('greatest')}.`,
  pumpUnknown: () =>
    'Nothing is known about the pump yet; type its rated power, its best flow and head, or points ' +
    'of its curve. Watts read at a speed, among the readings, will do as well.',
  curvePoints: (say) =>
    `The curve needs ${say('needed')} points with flow and head; it has ${say('found')}.`,
  curveHalf: () => 'This point is left out until it has both a flow and a head.',
  curveSameFlow: () => 'Another point has the same flow; each point must have a flow of its own.',
  curveRises: () =>
    'The head here is above that at a lower flow; a pump’s head must fall as the flow rises.',
  curveLevel: () => 'The head never falls along these points; the last must be below the first.',
  notTogether: () =>
    'These pipes and this pump cannot be worked out together; check the sizes and the curve for a ' +
    'figure that is far too small or too large.',
  powerBelowWater: (say) =>
    `At ${say('speed')} the pump would draw ${say('power')}, less than the ${say('hydraulic')} the ` +
    'water takes up there; check these watts, the flow and the head.',
  curveShutoff: () => 'The first of the three points must be at no flow; type 0 as its flow.',
} as const satisfies Sentences;

/** Readings, needs and limits. */
export const serviceSentences = {
  readingSpeed: () => 'This reading has no speed yet, so it is not used; type the speed in rpm.',
  readingEmpty: () =>
    'Nothing was read at this speed yet; type what a gauge, a meter or the drive showed.',
  readingZero: () => 'A reading of 0 says nothing here; leave it empty or type what was shown.',
  powerFalls: (say) =>
    `The power here is below that of the slower reading “${say('other')}”; power must rise with ` +
    'speed. Check both.',
  flowFalls: (say) =>
    `The flow here is below that of the slower reading “${say('other')}”; flow must rise with ` +
    'speed. Check both.',
  pressureFalls: (say) =>
    `The pressure here is below that of the slower reading “${say('other')}”; pressure must rise ` +
    'with speed. Check both.',
  flowTooFast: (say) =>
    `From reading “${say('other')}” to this one the flow rises more than the speed; it cannot by ` +
    'more than the meter’s error. Check both.',
  gaugesAgainstMeter: (say) =>
    `By the gauges the flow is ${say('least')} to ${say('greatest')}; the meter says ` +
    `${say('meter')}. They should agree; check both.`,
  aboveShutoff: (say) =>
    `The gauges add up to ${say('head')}, more than the pump’s ${say('shutoff')} at no flow; check ` +
    'the gauges, the speed and the curve.',
  powerTooLow: (say) =>
    `${say('power')} is less than the ${say('hydraulic')} the water takes up; check the power and ` +
    'the flow.',
  powerTooHigh: (say) =>
    `${say('power')} is more than volts times amperes allow, ${say('apparent')}; check the power, ` +
    'the current and the voltage.',
  offTheFit: () =>
    'This reading does not fit the others; take it again, or check what else changed in between.',
  noNeeds: () => 'No needs are described yet; add what the water is wanted for.',
  needFlow: () => 'The least flow is missing; type what the manual asks for.',
  needGreatest: () => 'The greatest flow is below the least; it must be the least flow or more.',
  needBranch: () =>
    'This need names a branch that is not there, so the whole flow counts; choose a branch again.',
  needMinutes: () => 'The time a day is missing; type it, or what it follows from.',
  needBasis: () =>
    'The time a day cannot be worked out yet; both figures and the volume of the pool are needed.',
  needTooLong: (say) =>
    `This works out at ${say('hours')} hours a day, more than a day has; a larger unit or less use ` +
    'is needed.',
  filterArea: () => 'The rate limits nothing until the filter has an area; type it there.',
  coverFlow: () => 'The flow marked on this cover is missing; read it off the cover.',
  coverBranch: () =>
    'This cover stands in a branch that is not there; choose one of the suction branches.',
  primingTooFast: (say) =>
    `Priming at ${say('found')} passes the stop of the suction covers, ${say('stop')}; set it to ` +
    `${say('stop')} or less before the pump runs.`,
  overrideTooFast: (say) =>
    `An override at ${say('found')} passes the stop of the suction covers, ${say('stop')}; set it ` +
    `to ${say('stop')} or less before the pump runs.`,
  frostTooFast: (say) =>
    `Freeze protection at ${say('found')} passes the stop of the suction covers, ${say('stop')}; ` +
    `set it to ${say('stop')} or less before the pump runs.`,
  limitZero: () => 'A limit of 0 would forbid all flow; leave it empty or type the limit.',
  quietSpeed: () => 'The fastest speed allowed in these hours is missing; type it in rpm.',
} as const satisfies Sentences;

/** Prices and the day. */
export const planSentences = {
  noSeason: () => 'There are no prices yet; add one season for a price that holds all year.',
  noDayType: () => 'This season has no kind of day yet; add one that holds every day.',
  noSuchDate: () => 'There is no such day in the year; correct the day or the month.',
  seasonTwice: () => 'Another season starts on the same day; each must start on its own.',
  seasonGap: () => 'This season ends before the next begins; end it on the day before.',
  seasonOverlap: () => 'This season ends after the next has begun; end it on the day before.',
  weekdayMissing: (say) => `No kind of day holds on ${say('weekday')}; give it to one of them.`,
  weekdayTwice: (say) => `Two kinds of day hold on ${say('weekday')}; it must be only one.`,
  bandGap: (say) => `No price holds from ${say('start')} to ${say('end')}; the bands must meet.`,
  bandOverlap: (say) =>
    `Two prices hold from ${say('start')} to ${say('end')}; the bands must not overlap.`,
  bandPrice: () => 'The price of this band is missing; type it per kWh.',
  holidayKind: () => 'This holiday counts as a kind of day that is not there; choose another.',
  holidayTwice: () => 'This day is listed twice; one of the two must go.',
  noBlocks: () => 'The day is empty; add a block with its times and speed.',
  blockSpeed: () => 'This block has no speed yet, so it counts as off; type its speed in rpm.',
  speedTooSlow: (say) =>
    `The pump cannot run at ${say('found')}; its slowest speed, ${say('limit')}, is ` +
    'taken instead.',
  speedTooFast: (say) =>
    `The pump cannot run at ${say('found')}; its fastest speed, ${say('limit')}, is ` +
    'taken instead.',
  dateDay: (say) =>
    `${say('month')} has ${say('last')} days, so the day is priced on its last; choose a date.`,
  blockOverlap: (say) =>
    `This block and another both hold from ${say('start')} to ${say('end')}; the one listed first ` +
    'keeps them. Move or shorten one.',
} as const satisfies Sentences;

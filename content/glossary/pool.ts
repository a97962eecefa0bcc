import type { Term } from './term.ts';

/** The pool, what stands on its pad, and the day it runs by. */
export const poolTerms: readonly Term[] = [
  {
    term: 'Available chlorine',
    says: 'The share of a product’s weight that counts as chlorine.',
    forms: ['available chlorine'],
  },
  {
    term: 'Backwash',
    says: 'Running water backward through a sand or DE filter to flush out what it has caught; a sand bed needs about 15 gpm for each square foot.',
    forms: ['backwash', 'backwashed', 'backwashing'],
  },
  {
    term: 'Binding need',
    says: 'The need that sets the price of a day: ask less of it and the day gets cheaper.',
    forms: ['binding need', 'binding needs'],
  },
  {
    term: 'Block',
    says: 'A stretch of the day with one speed, from a start to an end.',
    forms: ['block', 'blocks'],
  },
  {
    term: 'Cartridge filter',
    says: 'A filter with a pleated sleeve that you take out and hose off.',
    forms: ['cartridge filter', 'cartridge filters', 'cartridge', 'cartridges'],
  },
  {
    term: 'Cleaner',
    says: 'A device that travels over the pool floor, driven by the pump’s suction or pressure or by a pump of its own.',
    forms: ['pool cleaner', 'cleaners'],
  },
  {
    term: 'Demand charge',
    says: 'A charge for the highest power drawn in a month, on top of the energy; homes rarely have one, a lodge may.',
    forms: ['demand charge', 'demand charges'],
  },
  {
    term: 'Diatomaceous earth',
    says: 'A fine powder of fossil shells (DE) that coats the grids of some filters and catches very small dirt; the coat drops off when the pump stops.',
    forms: ['diatomaceous earth'],
  },
  {
    term: 'Entrapment',
    says: 'Being held by a suction outlet, by body, limb, hair or something worn; it kills, and one rated cover alone is not the whole protection.',
    forms: ['entrapment'],
  },
  {
    term: 'Equalizer port',
    says: 'A port low in a skimmer’s wall or in the pool that keeps the skimmer from running dry; it is a suction outlet and needs a rated cover.',
    forms: ['equalizer port', 'equalizer'],
  },
  {
    term: 'Eyeball',
    says: 'The round fitting in a return that you can turn to aim the jet; a smaller hole makes a harder jet and takes more head.',
    forms: ['eyeball', 'eyeballs'],
  },
  {
    term: 'Filter area',
    says: 'The area of sand bed, cloth or grid the water passes through, as printed on the filter.',
    forms: ['filter area'],
  },
  {
    term: 'Filter loading',
    says: 'How far a filter has gone from clean (0) to due for cleaning (1); its loss rises on the way.',
    forms: ['filter loading', 'loaded filter', 'filter loads', 'loading'],
  },
  {
    term: 'Filter media',
    says: 'What catches the dirt in a filter: sand, glass, cloth, or diatomaceous earth.',
    forms: ['filter media', 'media'],
  },
  {
    term: 'Filter rate',
    says: 'Flow divided by filter area, in gpm per square foot or meters per hour; the label gives the highest one allowed.',
    forms: ['filter rate', 'filter rates'],
  },
  {
    term: 'Fixed charge',
    says: 'What the utility asks for each day or month, however much or little you use.',
    forms: ['fixed charge', 'fixed charges', 'daily charge'],
  },
  {
    term: 'Flat price',
    says: 'The same price for a kilowatt-hour at every hour of the day.',
    forms: ['flat price', 'flat tariff', 'flat rate'],
  },
  {
    term: 'Flow switch',
    says: 'A switch that closes only while water really moves, so that a heater, cell or feeder cannot run without flow.',
    forms: ['flow switch', 'flow switches'],
  },
  {
    term: 'Heater',
    says: 'A unit that warms the water passing through it with gas, a heat pump or electricity; below its least flow it overheats or shuts itself off.',
    forms: ['heater', 'heaters'],
  },
  {
    term: 'Least flow',
    says: 'The flow below which a unit doesn’t work, or shuts itself off.',
    forms: ['least flow', 'least flows'],
  },
  {
    term: 'Multiport valve',
    says: 'One valve on a filter with positions for filter, backwash, rinse, waste and so on; never turn it under pressure.',
    forms: ['multiport valve', 'multiport valves'],
  },
  {
    term: 'Need',
    says: 'Something the pump must serve: at least so much flow for so many hours, perhaps at certain times of day.',
    forms: [],
  },
  {
    term: 'Off-peak',
    says: 'The hours when a time-of-use tariff is cheap.',
    forms: ['off-peak'],
  },
  {
    term: 'Payback',
    says: 'How long it takes until the savings add up to what you paid.',
    forms: ['payback'],
  },
  {
    term: 'Peak',
    says: 'The hours when a time-of-use tariff is most expensive.',
    forms: ['peak hours', 'peak price', 'on-peak'],
  },
  {
    term: 'Ppm',
    says: 'Parts per million; for pool water, the same as milligrams per liter.',
    forms: ['ppm'],
  },
  {
    term: 'Price of a need',
    says: 'What the day would save if the need took one hour less.',
    forms: ['price of a need', 'price of each need'],
  },
  {
    term: 'Quiet hours',
    says: 'Hours in which you let the pump run no faster than a speed you choose.',
    forms: ['quiet hours'],
  },
  {
    term: 'Salt cell',
    says: 'A unit that makes chlorine from salt in the water passing through it; without flow it collects gas, so it needs a flow switch.',
    forms: ['salt cell', 'salt cells'],
  },
  {
    term: 'Sand filter',
    says: 'A filter with a deep bed of sand or glass, cleaned by backwash.',
    forms: ['sand filter', 'sand filters'],
  },
  {
    term: 'Season',
    says: 'A part of the year with its own prices or its own day.',
    forms: [],
  },
  {
    term: 'Shortest run',
    says: 'The shortest unbroken time that does a need any good.',
    forms: ['shortest run', 'shortest runs'],
  },
  {
    term: 'Skimmer',
    says: 'An opening at the water line that draws the surface in over a floating door, the weir, and so takes off leaves and oil if the flow is strong enough.',
    forms: ['skimmer', 'skimmers', 'skimming'],
  },
  {
    term: 'Solar collector',
    says: 'Panels, often on a roof, that warm the pool water as it runs through them; the pump must lift the water until the line is full.',
    forms: ['solar collector', 'solar collectors', 'solar panels'],
  },
  {
    term: 'Speed ladder',
    says: 'A list of the slowest speed that serves each need, with its watts, velocity and cost.',
    forms: ['speed ladder'],
  },
  {
    term: 'Spillway',
    says: 'An edge over which water falls into the pool from something higher, such as a raised spa.',
    forms: ['spillway', 'spillways'],
  },
  {
    term: 'Suction outlet',
    says: 'An opening under water that the pump draws through: a main drain, but also a vacuum port or a skimmer’s equalizer; it needs a sound, rated cover.',
    forms: ['suction outlet', 'suction outlets', 'main drain', 'main drains'],
  },
  {
    term: 'Suction cover',
    says: 'The rated cover of a suction outlet, with the highest flow it may take marked on it, at times one mark for a floor and one for a wall.',
    forms: ['suction cover', 'suction covers', 'outlet cover', 'outlet covers'],
  },
  {
    term: 'Tariff',
    says: 'The utility’s prices for energy, by time of day, kind of day and season.',
    forms: ['tariff', 'tariffs'],
  },
  {
    term: 'Time of use',
    says: 'Pricing energy by the hour in which you use it.',
    forms: ['time of use', 'time-of-use'],
  },
  {
    term: 'Trade percent',
    says: 'Grams of chlorine in 100 mL of liquid chlorine, as printed on its label.',
    forms: ['trade percent'],
  },
  {
    term: 'Turnover',
    says: 'One pool volume of water moved; if the pool mixes perfectly, about 63 % of the water has then been through the filter.',
    forms: ['turnover', 'turnovers'],
  },
  {
    term: 'Vacuum release',
    says: 'A device that lets air in or stops the pump when a suction outlet gets blocked (SVRS); one of the second protections a single outlet needs.',
    forms: ['vacuum release'],
  },
  {
    term: 'Weir',
    says: 'The floating door in a skimmer’s mouth that lets only the top layer of water in; also any edge that water flows over.',
    forms: ['weir', 'weirs'],
  },
  {
    term: 'Window',
    says: 'The hours of the day in which a need may be served.',
    forms: [],
  },
];

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
    says: 'Running water backwards through a filter to wash out what it has caught.',
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
    says: 'A filter with a pleated sleeve that is taken out and hosed off.',
    forms: ['cartridge filter', 'cartridge filters', 'cartridge', 'cartridges'],
  },
  {
    term: 'Cleaner',
    says: 'A device that goes about the pool floor, driven by the water of the pump or by a pump of its own.',
    forms: ['pool cleaner', 'cleaners'],
  },
  {
    term: 'Demand charge',
    says: 'A charge for the greatest power drawn in a month, whatever the energy.',
    forms: ['demand charge', 'demand charges'],
  },
  {
    term: 'Diatomaceous earth',
    says: 'A fine powder of fossil shells that coats the grids of some filters and catches very small dirt.',
    forms: ['diatomaceous earth'],
  },
  {
    term: 'Entrapment',
    says: 'Being held by the pull of a suction outlet; it kills, and rated covers and their flow limits exist to prevent it.',
    forms: ['entrapment'],
  },
  {
    term: 'Eyeball',
    says: 'The ball-shaped outlet of a return in the pool wall, which can be turned to aim the water.',
    forms: [],
  },
  {
    term: 'Filter area',
    says: 'The area of sand bed, cloth or grid the water passes through, as printed on the filter.',
    forms: ['filter area'],
  },
  {
    term: 'Filter loading',
    says: 'How far a filter has gone from clean towards due for cleaning; its loss rises on the way.',
    forms: ['filter loading', 'loaded filter', 'filter loads', 'loading'],
  },
  {
    term: 'Filter media',
    says: 'What catches the dirt in a filter: sand, glass, cloth, or diatomaceous earth.',
    forms: ['filter media', 'media'],
  },
  {
    term: 'Filter rate',
    says: 'Flow over filter area, in gpm per square foot or metres per hour; the label gives the greatest one.',
    forms: ['filter rate', 'filter rates'],
  },
  {
    term: 'Fixed charge',
    says: 'Money a day or a month that the utility asks whatever you use.',
    forms: ['fixed charge', 'fixed charges', 'daily charge'],
  },
  {
    term: 'Flat price',
    says: 'One price of a kilowatt-hour at every time of day.',
    forms: ['flat price', 'flat tariff', 'flat rate'],
  },
  {
    term: 'Heater',
    says: 'A unit that warms the water as it passes and needs a least flow to do so safely.',
    forms: ['heater', 'heaters'],
  },
  {
    term: 'Least flow',
    says: 'The flow below which a unit does not work, or shuts itself off.',
    forms: ['least flow', 'least flows'],
  },
  {
    term: 'Multiport valve',
    says: 'One valve on a sand filter with positions for filter, backwash, rinse, waste and the like.',
    forms: ['multiport valve'],
  },
  {
    term: 'Need',
    says: 'Something the pump must serve: a least flow for so many hours, perhaps at certain times of day.',
    forms: [],
  },
  {
    term: 'Off-peak',
    says: 'The hours when a time-of-use tariff is cheap.',
    forms: ['off-peak'],
  },
  {
    term: 'Payback',
    says: 'How long savings take to add up to what was paid for them.',
    forms: ['payback'],
  },
  {
    term: 'Peak',
    says: 'The hours when a time-of-use tariff is dearest.',
    forms: ['peak hours', 'peak price', 'on-peak'],
  },
  {
    term: 'Ppm',
    says: 'Parts per million, in the trade another word for milligrams per litre.',
    forms: ['ppm'],
  },
  {
    term: 'Price of a need',
    says: 'What the day would save if the need asked for one hour less.',
    forms: ['price of a need', 'price of each need'],
  },
  {
    term: 'Quiet hours',
    says: 'Hours in which you allow the pump no more than a certain speed.',
    forms: ['quiet hours'],
  },
  {
    term: 'Salt cell',
    says: 'A unit that makes chlorine from salt in the water while enough water passes.',
    forms: ['salt cell', 'salt cells'],
  },
  {
    term: 'Sand filter',
    says: 'A filter with a deep bed of sand or glass, cleaned by backwash.',
    forms: ['sand filter', 'sand filters'],
  },
  {
    term: 'Schedule',
    says: 'What the pump does over the day: each start, each end and each speed.',
    forms: [],
  },
  {
    term: 'Season',
    says: 'A part of the year with its own prices or its own day.',
    forms: [],
  },
  {
    term: 'Shortest run',
    says: 'The least time at a stretch that is of use to a need.',
    forms: ['shortest run', 'shortest runs'],
  },
  {
    term: 'Skimmer',
    says: 'An opening at the water line that draws floating dirt off the surface, when the flow is strong enough.',
    forms: ['skimmer', 'skimmers', 'skimming'],
  },
  {
    term: 'Solar collector',
    says: 'Panels, often on a roof, that the pool water runs through to be warmed by the sun.',
    forms: ['solar collector', 'solar collectors', 'solar panels'],
  },
  {
    term: 'Speed ladder',
    says: 'The slowest speed that serves each need, in a list, with its watts, velocity and cost.',
    forms: ['speed ladder'],
  },
  {
    term: 'Spillway',
    says: 'An edge over which water falls back into the pool from something higher.',
    forms: ['spillway', 'spillways'],
  },
  {
    term: 'Suction outlet',
    says: 'An opening under water through which the pump draws, such as a main drain; it must have a sound, rated cover.',
    forms: ['suction outlet', 'suction outlets', 'main drain', 'main drains'],
  },
  {
    term: 'Suction cover',
    says: 'The rated cover of a suction outlet, with the greatest flow it may pass marked on it.',
    forms: ['suction cover', 'suction covers', 'outlet cover', 'outlet covers'],
  },
  {
    term: 'Tariff',
    says: 'The prices a utility asks for energy, by time of day, kind of day and season.',
    forms: ['tariff', 'tariffs'],
  },
  {
    term: 'Time of use',
    says: 'A way of pricing energy by the hour of the day it is used in.',
    forms: ['time of use', 'time-of-use'],
  },
  {
    term: 'Trade percent',
    says: 'Grams of chlorine in 100 mL of liquid chlorine, as its label states it.',
    forms: ['trade percent'],
  },
  {
    term: 'Turnover',
    says: 'One pool volume of water moved; in a well-mixed pool about 63 % of the water has then passed the filter.',
    forms: ['turnover', 'turnovers'],
  },
  {
    term: 'Weir',
    says: 'The floating flap in the mouth of a skimmer that lets only the top of the water in.',
    forms: [],
  },
  {
    term: 'Window',
    says: 'The hours of the day in which a need may be served.',
    forms: [],
  },
];

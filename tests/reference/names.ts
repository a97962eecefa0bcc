/** The names keys may carry, once unit and index are taken off, and what each one means. */
import type { Dimension } from './keyUnits.ts';

/**
 * `number` is a bare number or a ratio in whatever unit, `ratio` one whose unit must be spelled out
 * (a bare "speed" is not a ratio). `text` stands for words, `structure` for lists and objects, which
 * rules read themselves.
 */
export type Kind = Dimension | 'number' | 'text' | 'structure' | 'flag';

type Row = readonly [name: string, kind: Kind, ...spellings: string[]];

// An empty spelling is a key that is nothing but a unit, such as "hours" or "inhg".
const rows: readonly Row[] = [
  // Water
  ['temperature', 'temperature', 'temperature', 'water_temperature'],
  ['target', 'temperature', 'target', 'target_temperature', 'temperature_target'],
  [
    'temperatureRise',
    'temperatureDifference',
    'temperature_rise',
    'rise',
    'temperature_difference',
  ],
  ['density', 'density', 'density'],
  ['specificHeat', 'specificHeat', 'specific_heat'],
  ['dynamicViscosity', 'dynamicViscosity', 'dynamic_viscosity', 'viscosity'],
  ['kinematicViscosity', 'kinematicViscosity', 'kinematic_viscosity', 'viscosity'],
  ['vapourPressure', 'pressure', 'vapour_pressure', 'vapor_pressure', 'saturation_pressure'],
  // Pipe
  ['nominal', 'length', 'nominal', 'nominal_size', 'nominal_diameter'],
  ['schedule', 'number', 'schedule'],
  ['pn', 'number', 'pn', 'pressure_class'],
  ['outsideDiameter', 'length', 'outside_diameter', 'outer_diameter'],
  ['standard', 'text', 'standard'],
  ['wall', 'length', 'wall', 'wall_thickness'],
  ['bore', 'length', 'inside_diameter', 'inner_diameter', 'bore', 'pipe_bore'],
  ['area', 'area', 'area', 'flow_area', 'surface', 'surface_area'],
  ['contents', 'volumePerLength', 'volume', 'contents'],
  ['length', 'length', 'length', 'pipe_length'],
  ['roughness', 'length', 'roughness'],
  ['relativeRoughness', 'number', 'relative_roughness'],
  ['reynolds', 'number', 'reynolds', 'reynolds_number'],
  ['frictionFactor', 'number', 'friction_factor', 'darcy_friction_factor'],
  ['law', 'text', 'law'],
  ['form', 'text', 'form'],
  ['hazenC', 'number', 'hazen_williams_c', 'c', 'hazen_williams_coefficient'],
  ['headGradient', 'ratio', 'head_loss', 'gradient'],
  ['headLoss', 'length', 'head_loss', 'friction_loss', 'loss'],
  ['pressureLoss', 'pressure', 'pressure_loss', 'pressure_drop', 'head_loss'],
  ['velocity', 'velocity', 'velocity', 'mean_velocity'],
  // Fittings
  ['fitting', 'text', 'fitting'],
  ['edition', 'text', 'edition'],
  ['turbulentFriction', 'number', 'friction_factor_turbulent', 'f_t'],
  ['k', 'number', 'k', 'k_total', 'k_sum'],
  ['kFittings', 'number', 'k_fittings', 'fittings_k'],
  ['kList', 'structure', 'k_list'],
  ['diameter', 'length', 'diameter'],
  // Pump and circuit
  ['flow', 'flow', 'flow', 'q', 'flow_rate'],
  ['flowLow', 'flow', 'flow_low', 'low_flow'],
  ['flowHigh', 'flow', 'flow_high', 'high_flow'],
  ['proportionalFlow', 'flow', 'flow_if_proportional'],
  ['head', 'length', 'head'],
  ['headLow', 'length', 'head_low'],
  ['headHigh', 'length', 'head_high'],
  ['power', 'power', 'power', 'wire_power', 'electrical_power'],
  ['powerLow', 'power', 'power_low'],
  ['powerHigh', 'power', 'power_high'],
  ['cubePowerOnly', 'power', 'power_if_cube'],
  ['fixedPower', 'power', 'fixed_power'],
  ['cubePower', 'power', 'cube_power'],
  ['shaftPower', 'power', 'shaft_power'],
  ['hydraulicPower', 'power', 'hydraulic_power', 'water_power'],
  ['hydraulicHorsepower', 'number', 'hydraulic_horsepower', 'water_horsepower'],
  ['weight', 'number', 'weight'],
  ['efficiency', 'number', 'efficiency', 'motor_efficiency', 'heater_efficiency'],
  ['speed', 'speed', 'speed', ''],
  ['referenceSpeed', 'speed', 'reference_speed', 'rated_speed', 'full_speed'],
  ['speedRatio', 'ratio', 'speed'],
  ['speedRatio', 'number', 'speed_ratio', 'r'],
  ['pumpHead', 'length', 'pump_head', 'pump_curve'],
  ['systemHead', 'length', 'system_head', 'system_curve'],
  ['staticHead', 'length', 'static_head', 'z', 'lift', 'static_lift'],
  ['shutoffHead', 'length', 'shutoff_head', 'shut_off_head'],
  ['pumpLaw', 'text', 'pump_law'],
  ['units', 'text', 'units'],
  ['points', 'structure', 'points', 'pump_points'],
  ['caseStaticHead', 'number', 'z'],
  ['equipment', 'structure', 'equipment'],
  ['equipmentK', 'number', 'equipment_k'],
  ['h0', 'number', 'h0'],
  ['q0', 'number', 'q0'],
  ['n', 'number', 'n', 'exponent'],
  ['loading', 'number', 'loading'],
  ['referenceHead', 'length', 'h0', 'reference_head'],
  ['referenceFlow', 'flow', 'q0', 'reference_flow'],
  ['series', 'structure', 'series'],
  ['parallel', 'structure', 'parallel', 'branches'],
  ['suctionParallel', 'structure', 'parallel_suction', 'suction_parallel', 'suction_branches'],
  ['returnParallel', 'structure', 'parallel_return', 'return_parallel', 'return_branches'],
  ['branchShare', 'number', 'share_branch', 'branch_share', 'share_branch_flow', 'branch_flow'],
  ['branchFlow', 'flow', 'branch_flow', 'flow_branch', 'flow_in_branch'],
  ['branchShares', 'structure', 'branch_shares', 'shares', 'share_branches'],
  ['branchFlows', 'flow', 'branch_flows', 'flows'],
  ['beyondLastPoint', 'flag', 'beyond_last_point', 'extrapolated'],
  // Gauges
  ['pressure', 'pressure', 'pressure', 'gauge_pressure', ''],
  ['vacuum', 'pressure', 'vacuum', 'suction_vacuum'],
  ['dischargePressure', 'pressure', 'discharge', 'discharge_pressure'],
  ['gaugeHeight', 'length', 'gauge_height_difference', 'gauge_height'],
  ['dischargeBore', 'length', 'discharge_bore', 'discharge_diameter'],
  ['suctionBore', 'length', 'suction_bore', 'suction_diameter'],
  ['totalHead', 'length', 'total_dynamic_head', 'tdh', 'total_head'],
  ['tradeTotalHead', 'length', 'with_trade_factors'],
  ['factor', 'number', 'factor', 'trade_factor'],
  ['error', 'number', 'error', 'difference'],
  // Suction
  ['geopotentialAltitude', 'length', 'geopotential_altitude'],
  ['geometricAltitude', 'length', 'geometric_altitude', 'elevation'],
  ['altitude', 'length', 'altitude'],
  ['atmosphere', 'pressure', 'atmosphere', 'atmospheric_pressure'],
  ['suctionHead', 'length', 'suction_head'],
  ['suctionLoss', 'length', 'friction', 'suction_loss', 'suction_friction'],
  ['npshAvailable', 'length', 'npsh_available', 'npsha'],
  ['npshRequired', 'length', 'npsh_required', 'npshr'],
  ['npshMargin', 'length', 'npsh_margin', 'margin'],
  // Electricity
  ['voltage', 'voltage', 'voltage'],
  ['current', 'current', 'current'],
  ['powerFactor', 'number', 'power_factor'],
  ['energy', 'energy', 'energy', ''],
  ['cost', 'number', 'cost'],
  ['price', 'price', 'price', ''],
  ['costPerVolume', 'costPerVolume', 'cost', 'price'],
  ['energyPerVolume', 'energyPerVolume', 'energy', ''],
  ['blocks', 'structure', 'blocks'],
  ['tariff', 'structure', 'tariff', 'bands'],
  ['dailyCharge', 'number', 'daily_charge'],
  ['start', 'text', 'start', 'from'],
  ['start', 'time', 'start', 'from'],
  ['end', 'text', 'end', 'to', 'until'],
  ['end', 'time', 'end', 'to', 'until'],
  ['costOfDay', 'number', 'cost_per_day', 'daily_cost'],
  ['costOfMonth', 'number', 'cost_per_month', 'monthly_cost'],
  ['costOfYear', 'number', 'cost_per_year', 'annual_cost', 'yearly_cost'],
  // The cheapest day
  ['speeds', 'structure', 'speeds'],
  ['name', 'text', 'name', 'need', 'label'],
  ['leastVolume', 'volume', 'min_volume', 'least_volume', 'minimum_volume'],
  ['needs', 'structure', 'needs'],
  ['quiet', 'structure', 'quiet', 'quiet_hours'],
  ['leastFlow', 'flow', 'min_flow', 'least_flow', 'minimum_flow'],
  ['greatestFlow', 'flow', 'max_flow', 'greatest_flow', 'maximum_flow'],
  ['leastTime', 'time', 'min', 'min_time', 'needed', 'required', 'wanted'],
  ['shortestRun', 'time', 'min_run', 'min_run_length', 'run_at_least'],
  ['oneRun', 'flag', 'one_run', 'in_one_run', 'contiguous', 'unbroken'],
  ['windows', 'structure', 'windows', 'window'],
  ['limits', 'structure', 'limits'],
  ['greatestSpeed', 'text', 'max_speed'],
  ['greatestSpeed', 'speed', 'max', 'max_speed'],
  ['greatestSpeed', 'ratio', 'max_speed'],
  ['off', 'flag', 'off', 'must_be_off', 'pump_off'],
  ['leastTurnovers', 'number', 'min_turnovers', 'min_turnovers_per_day', 'turnovers_per_day'],
  ['slot', 'time', 'slot', 'slot_length', 'step', 'time_step', 'grid', 'interval', 'resolution'],
  ['mayStop', 'flag', 'may_stop', 'may_be_off', 'can_stop', 'off_allowed', 'may_stand_still'],
  ['changes', 'number', 'changes', 'changes_made'],
  ['offTime', 'time', 'off', 'stopped', 'standing_still'],
  ['shortVolume', 'volume', 'short', 'shortfall', 'missing', 'missing_volume', 'volume_short'],
  ['shortTime', 'time', 'short', 'shortfall', 'missing', 'need_short'],
  ['greatestVolume', 'volume', 'max_volume', 'max_possible_volume'],
  ['binding', 'structure', 'binding', 'binding_needs', 'binding_constraints', 'binds'],
  ['volumeBinds', 'flag', 'volume_binds', 'volume_is_binding'],
  ['costOfHourMore', 'number', 'cost_of_one_more_hour', 'price_of_one_more_hour'],
  ['costOfNeed', 'number', 'cost_of_need', 'price_of_need'],
  ['costWithoutNeed', 'number', 'cost_without_need', 'cost_without_needs'],
  ['plan', 'structure', 'plan', 'schedule', 'speed_by_hour', 'speeds_by_hour', 'state_by_hour'],
  ['mostChanges', 'number', 'max_changes', 'most_changes'],
  ['alwaysOn', 'flag', 'always_on', 'never_off', 'must_run'],
  ['feasible', 'flag', 'feasible'],
  ['hoursPerSpeed', 'structure', 'hours_per_speed'],
  ['minutesPerSpeed', 'structure', 'minutes_per_speed'],
  // The label's rule
  ['variety', 'text', 'variety', 'class'],
  ['paragraph', 'text', 'paragraph'],
  ['divisor', 'number', 'divisor'],
  ['wef', 'volumePerEnergy', 'wef', 'weighted_energy_factor'],
  ['leastWef', 'volumePerEnergy', 'least_wef'],
  ['energyFactor', 'volumePerEnergy', 'energy_factor', 'ef'],
  ['passes', 'flag', 'passes'],
  ['airTemperature', 'temperature', 'air_temperature'],
  ['runTime', 'time', 'run_time', 'run', 'running', 'on'],
  ['date', 'text', 'date'],
  ['document', 'text', 'document'],
  ['section', 'text', 'section'],
  ['line', 'text', 'line'],
  // Pool
  ['shape', 'text', 'shape'],
  ['width', 'length', 'width'],
  ['depth', 'length', 'depth', 'mean_depth', 'average_depth'],
  ['radius', 'length', 'radius'],
  ['vertices', 'structure', 'vertices'],
  ['stations', 'structure', 'stations', 'depth_profile'],
  ['volume', 'volume', 'volume', 'pool_volume', 'volume_moved', ''],
  // Mixing
  ['turnovers', 'number', 'turnovers'],
  ['share', 'number', '', 'share', 'passed', 'filtered'],
  ['filterEfficiency', 'number', 'filter_efficiency'],
  ['time', 'time', '', 'time', 'duration', 'turnover', 'turnover_time', 'allowed', 'listed'],
  // Chlorine and heat
  ['rise', 'concentration', 'rise', 'chlorine_rise', ''],
  ['chlorine', 'mass', 'mass', 'chlorine', 'chlorine_mass'],
  ['availableChlorine', 'number', 'available_chlorine'],
  ['tradeStrength', 'number', 'trade'],
  ['product', 'mass', 'product', 'product_mass'],
  ['productVolume', 'volume', 'product', 'product_volume'],
  ['cell', 'massRate', 'cell', 'cell_output', 'cell_rate'],
  ['outputShare', 'number', 'output'],
  ['heater', 'power', 'heater', 'heater_power', 'heater_output'],
  ['tradeHeat', 'energy', 'trade_8_34'],
  ['tradeError', 'number', 'trade_error'],
];

/** Words that say the same in every name. */
const sameWord: Readonly<Record<string, string>> = {
  maximum: 'max',
  greatest: 'max',
  highest: 'max',
  most: 'max',
  minimum: 'min',
  least: 'min',
  lowest: 'min',
  shortest: 'min',
  vapor: 'vapour',
  temp: 'temperature',
  dia: 'diameter',
  inner: 'inside',
  internal: 'inside',
  outer: 'outside',
  external: 'outside',
  prices: 'price',
  thickness: 'wall',
  coefficient: 'k',
  coefficients: 'k',
  rated: 'reference',
  full: 'reference',
  wire: 'electrical',
  input: 'electrical',
  liquid: 'water',
};

/** A name as a set of words, so that `flow_low` and `low_flow` are one. */
function wordsOf(spelling: string): string {
  const words = spelling.split('_').filter((word) => word !== 'of' && word !== 'the');
  return words
    .map((word) => (Object.hasOwn(sameWord, word) ? (sameWord[word] as string) : word))
    .sort()
    .join('_');
}

/** Two things of one kind that one spelling would stand for; there must be none. */
export const clashes: string[] = [];

const meanings = new Map<string, string>();
for (const [name, kind, ...spellings] of rows)
  for (const spelling of spellings) {
    const key = `${wordsOf(spelling)} ${kind}`;
    const held = meanings.get(key);
    if (held !== undefined && held !== name) clashes.push(`${key}: ${held}, ${name}`);
    else meanings.set(key, name);
  }

/** The name that a spelling has for a kind of quantity; undefined when it has none. */
export function nameOf(spelling: string, kind: Kind): string | undefined {
  return meanings.get(`${wordsOf(spelling)} ${kind}`);
}

/**
 * Formulas of moist air, cold and heat, batteries and daylight: pure functions with their sources, ranges and tested accuracy. Enter at
 * {@link coldproof.physics.Psychrometrics}, {@link coldproof.physics.WindChill}, {@link coldproof.physics.Frostbite},
 * {@link coldproof.physics.LumpedBody}, {@link coldproof.physics.CooldownFit}, {@link coldproof.physics.BatteryBudget}, {@link coldproof.physics.HeatIndex},
 * {@link coldproof.physics.WarmUpSchedule} and {@link coldproof.physics.Sun}. Knows nothing of studies or rules. May use {@code quantity};
 * an argument out of range is refused with its name, value and range, never extrapolated.
 */
package coldproof.physics;

namespace Studio.Shell;

/// <summary>The units a person may type, and how they turn into the one a field keeps.</summary>
internal static class UnitTable
{
    private static readonly HashSet<string> Celsius = new(StringComparer.OrdinalIgnoreCase) { "°C", "C", "°", "deg", "degC", "degrees", "celsius" };

    private static readonly HashSet<string> Fahrenheit = new(StringComparer.OrdinalIgnoreCase) { "°F", "F", "degF", "fahrenheit" };

    // exact by definition: the international inch, the avoirdupois ounce and pound
    private static readonly Dictionary<string, (string Kind, double Factor)> Known = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = ("length", 1),
        ["cm"] = ("length", 10),
        ["m"] = ("length", 1000),
        ["in"] = ("length", 25.4),
        ["inch"] = ("length", 25.4),
        ["inches"] = ("length", 25.4),
        ["\""] = ("length", 25.4),
        ["''"] = ("length", 25.4),
        ["ft"] = ("length", 304.8),
        ["'"] = ("length", 304.8),
        ["g"] = ("mass", 1),
        ["gram"] = ("mass", 1),
        ["grams"] = ("mass", 1),
        ["gr"] = ("mass", 1),
        ["kg"] = ("mass", 1000),
        ["mg"] = ("mass", 0.001),
        ["oz"] = ("mass", 28.349523125),
        ["lb"] = ("mass", 453.59237),
        ["lbs"] = ("mass", 453.59237),
        ["ml"] = ("volume", 1),
        ["l"] = ("volume", 1000),
        ["litre"] = ("volume", 1000),
        ["litres"] = ("volume", 1000),
        ["liter"] = ("volume", 1000),
        ["cl"] = ("volume", 10),
        ["dl"] = ("volume", 100),
        ["cm3"] = ("volume", 1),
        ["cc"] = ("volume", 1),
        ["min"] = ("time", 1),
        ["mins"] = ("time", 1),
        ["minute"] = ("time", 1),
        ["minutes"] = ("time", 1),
        ["h"] = ("time", 60),
        ["hr"] = ("time", 60),
        ["hrs"] = ("time", 60),
        ["hour"] = ("time", 60),
        ["hours"] = ("time", 60),
        ["d"] = ("time", 1440),
        ["day"] = ("time", 1440),
        ["days"] = ("time", 1440),
        ["week"] = ("time", 10080),
        ["weeks"] = ("time", 10080),
        ["bar"] = ("pressure", 1),
        ["psi"] = ("pressure", 0.0689475729317831),
        ["kPa"] = ("pressure", 0.01),
        ["MPa"] = ("pressure", 10),
        ["%"] = ("percent", 1),
        ["percent"] = ("percent", 1),
        ["g/ml"] = ("density", 1),
        ["g/cm3"] = ("density", 1),
        ["g/cc"] = ("density", 1),
        ["kg/l"] = ("density", 1),
        ["kg/m3"] = ("density", 0.001),
        ["g/l"] = ("density", 0.001),
        ["mPa·s"] = ("viscosity", 1),
        ["mPas"] = ("viscosity", 1),
        ["mPa⋅s"] = ("viscosity", 1),
        ["cP"] = ("viscosity", 1),
        ["cps"] = ("viscosity", 1),
        ["Pa·s"] = ("viscosity", 1000),
        ["Pas"] = ("viscosity", 1000),
    };

    private static readonly Dictionary<string, string> Currencies = new(StringComparer.Ordinal) { ["£"] = "GBP", ["€"] = "EUR", ["¥"] = "JPY" };

    /// <summary>The number in the field's unit, or a sentence saying why the unit does not fit.</summary>
    public static (double? Value, string? Wrong) Convert(double number, string said, string unit)
    {
        if (string.Equals(said, unit, StringComparison.OrdinalIgnoreCase) || Pays(said, unit))
        {
            return (number, null);
        }

        if (unit == "°C")
        {
            return Degrees(number, said);
        }

        if (unit == "°" && said is "deg" or "degrees")
        {
            return (number, null);
        }

        if (Known.TryGetValue(said, out var from) && Known.TryGetValue(unit, out var to) && from.Kind == to.Kind)
        {
            return (number * (from.Factor / to.Factor), null);
        }

        return (null, unit.Length == 0 ? $"Type the number alone, without “{said}”." : $"“{said}” is not a unit for this. Use {unit}, such as {Example(unit)}.");
    }

    /// <summary>What a good answer looks like.</summary>
    public static string Example(string unit) => unit switch
    {
        "mm" => "150 or 6 in",
        "g" => "412.5",
        "g/ml" => "1.10",
        "h" => "6 or 3 days",
        "°C" => "19.5 or 68 °F",
        "" => "2",
        _ => "12.5",
    };

    private static (double? Value, string? Wrong) Degrees(double number, string said) =>
        Celsius.Contains(said) ? (number, null)
        : Fahrenheit.Contains(said) ? ((number - 32) / 1.8, null)
        : (null, $"“{said}” is not a unit for this. Use °C, such as {Example("°C")}.");

    private static bool Pays(string said, string unit) =>
        unit.Length == 3 && (Currencies.GetValueOrDefault(said) == unit || (said == "$" && unit.EndsWith('D')));
}

using Studio.Engine;

namespace Studio.Resins;

/// <summary>The engine's names of a sheet's fields as the form calls them.</summary>
internal static class CureFields
{
    /// <summary>"Peak of that cup: must lie between …".</summary>
    internal static string Said(InputError error) => error.Path switch
    {
        "potLifeMinutes" => "Pot life: ",
        "gelMinutes" => "Gel time of that cup: ",
        "cupMassG" => "Mass of the cup: ",
        "atCelsius" => "Temperature beside the pot life: ",
        "peakCelsius" => "Peak of that cup: ",
        "maxPourMm" => "Deepest pour: ",
        "demouldHours" => "Demould: ",
        "fullCureHours" => "Full cure: ",
        "glassEndC" => "Softens from (with 5 K added): ",
        "densityKgPerM3" => "Density: ",
        _ => "",
    } + error.Message;
}

namespace Studio.Engine.Custody;

/// <summary>The materials a keepsake can be made of. A new one is one record here and one row of cases in the tests.</summary>
public static class MaterialRules
{
    private const string CommonPractice = "common practice, no source";

    /// <summary>All rules in the order of the list to choose from; the last is for everything else.</summary>
    public static IReadOnlyList<MaterialRule> All { get; } =
    [
        new("photograph-only-copy", "Photograph, the only one there is",
            "Never embed the only photograph: scan it, embed a print of the scan, and return the original.",
            Severity.Stop, "our rule") { MayBeOverruled = true },
        new("photograph-dye-inkjet", "Photograph, inkjet print with dye ink",
            "Keep it below 65 % relative humidity and dry before resin: dye bleeds within a day at 80 %. Seal both sides and try the sealer and the resin on a spare print first.",
            Severity.Warn, "Image Permanence Institute DP3; sealing: " + CommonPractice),
        new("photograph-pigment-inkjet", "Photograph, inkjet print with pigment ink",
            "Do not wet or rub it: a little of the ink dissolves again and rubs off. Seal both sides and try the resin on a spare print first.",
            Severity.Note, "a printer maker's white paper; sealing: " + CommonPractice),
        new("photograph-laser", "Photograph or drawing, laser print",
            "Toner stands water but resin and solvents may soften it. Try sealer and resin on a spare strip first.",
            Severity.Note, CommonPractice),
        new("letter", "Letter or other paper",
            "Embed a copy and return the original unless the family says otherwise in writing. Old ink may run and paper turns dark and glassy in resin: try a corner of the copy, and seal both sides.",
            Severity.Warn, CommonPractice),
        new("dried-flower", "Flower or leaf",
            "Dry it right through, 2 to 7 days in silica gel and longer for a thick rose. Weigh it on two days running: go on when it loses no more than 0.5 % in 24 h at 50 % relative humidity or less.",
            Severity.Warn, "drying times: extension leaflet, reprinted; weight limit: our rule, no published limit found") { DryingDays = 7, DryingSource = "extension leaflet, reprinted: 2 to 7 days in silica gel, here the longer" },
        new("iron", "Iron or steel",
            "Remove loose rust, wipe off grease with a solvent in gloves, dry it, and keep it below 35 % relative humidity until resin covers it. Keep flames away from the solvent.",
            Severity.Warn, "below 35 %: WA Museum conservation manual; degreasing: " + CommonPractice),
        new("brass", "Brass, copper, silver or another metal",
            "Wipe off grease with a solvent in gloves and dry it; keep it below 45 % relative humidity. Let it not touch another metal. Ask before polishing: the patina may be what they remember.",
            Severity.Note, "below 45 %: WA Museum conservation manual; dissimilar metals: CCI Notes 9/2; degreasing: " + CommonPractice),
        new("textile", "Cloth, thread or lace",
            "Dry it and soak it with a thin coat of resin or sealer first, or it feeds bubbles into the layer and darkens in patches. Try a hidden thread.",
            Severity.Note, CommonPractice) { DryingDays = 1, DryingSource = CommonPractice },
        new("wood", "Wood, bark or cork",
            "Dry it to constant weight and seal it all round: wood breathes out air and moisture for hours. It is lighter than resin and must be tacked down.",
            Severity.Warn, CommonPractice + "; floating: Archimedes with CRC densities") { DryingDays = 7, DryingSource = CommonPractice },
        new("ashes", "Ashes",
            "Weigh what came in, what goes into the piece and what goes back, and write all three down. Dry them, and try a pinch in a little resin first: they take up moisture and may be alkaline.",
            Severity.Warn, "inferred from Dorozhkin, Biomatter 1 (2011) 121, Table 2; weighing: our rule") { DryingDays = 1, DryingSource = CommonPractice },
        new("hair", "Hair or fur",
            "Wash, rinse and dry it, tie it, and wet it through with resin before it goes in, or air stays between the hairs. Return what is not used.",
            Severity.Note, CommonPractice) { DryingDays = 1, DryingSource = CommonPractice },
        new("plastic", "Button or other plastic",
            "Find out whether resin softens or clouds it: try a hidden spot. Wash off grease and dry it.",
            Severity.Note, CommonPractice),
        new("electronics", "Electronics without a battery",
            "Keep it out of the casting: put it in the light cavity where a hand can reach it. Cured resin cannot be opened for a repair.",
            Severity.Warn, "our rule"),
        new("battery", "Battery, or anything with one inside",
            "A battery never goes inside the casting. Take it out, or use a cavity with a closed lid that needs a tool. Keep button cells from children: swallowed, they burn within hours.",
            Severity.Stop, "our rule, backed by 16 CFR 1263 and UL 4200A-2023; burns: from memory"),
        new("glass", "Glass, stone, china or shell",
            "Clean it with a solvent, dry it, and bring it to the room's temperature. Fill hollows and holes first: trapped air rises while the resin sets. Keep flames away from the solvent.",
            Severity.Note, CommonPractice),
        new("other", "Something else",
            "Dry it, clean it, and try a scrap or a hidden spot in a little resin before you decide. When in doubt embed a copy and return the original.",
            Severity.Warn, CommonPractice),
    ];

    /// <summary>The rule for a key. A material that nobody here knows must not go into resin before somebody has said what it is.</summary>
    public static MaterialRule For(string? key) => All.FirstOrDefault(r => string.Equals(r.Key, key, StringComparison.Ordinal)) ?? new(
        key ?? "",
        string.IsNullOrWhiteSpace(key) ? "Material not noted" : $"Material not known (“{key}” is noted)",
        "What it is made of is not known here, so nobody can say what it needs. Look at it, correct the material, and follow that rule before it goes into resin.",
        Severity.Stop,
        "our rule");
}

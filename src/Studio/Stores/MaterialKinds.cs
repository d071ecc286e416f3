namespace Studio.Stores;

/// <summary>What bought things are called, in the order a form offers them. A new kind is one line.</summary>
public static class MaterialKinds
{
    public static IReadOnlyList<(string Key, string Words)> All { get; } =
    [
        ("pigment", "Pigment or tint"),
        ("glitter", "Glitter"),
        ("stone", "Stone, sand, shell"),
        ("glass", "Glass and porcelain"),
        ("metal", "Metal"),
        ("wood", "Wood and cork"),
        ("fibre", "Thread and cloth"),
        ("paper", "Paper"),
        ("film", "Film for printing"),
        ("wax", "Wax"),
        ("bone", "Bone and ash"),
        ("plastic", "Plastic and rubber"),
        ("light", "Light"),
        ("battery", "Battery"),
        ("hardware", "Hardware"),
        ("packaging", "Packaging"),
        ("drying", "Drying"),
        ("consumable", "Used up at the bench"),
    ];

    /// <summary>Key and words of what a material is counted in.</summary>
    public static IReadOnlyList<(string Key, string Words)> Units { get; } = [("g", "grams"), ("ml", "millilitres"), ("piece", "pieces"), ("sheet", "sheets")];

    /// <summary>The kind in words; a key of the maker's own is said as it is.</summary>
    public static string Words(string key) => All.FirstOrDefault(k => k.Key == key).Words ?? key;

    /// <summary>Densities that are usual for a kind [g/ml], solid and without the air between pieces: common practice, no source. Null where its things are too unlike each other.</summary>
    public static (double Low, double High)? UsualDensity(string key) => key switch
    {
        "pigment" => (0.2, 7),
        "glitter" => (0.9, 4),
        "stone" => (1, 5.5),
        "glass" => (2, 4.5),
        "metal" => (1.7, 22.6),
        "wood" => (0.1, 1.4),
        "fibre" => (0.8, 2),
        "paper" => (0.4, 1.6),
        "film" => (0.85, 1.8),
        "wax" => (0.8, 1.1),
        "bone" => (0.9, 3.4),
        "plastic" => (0.85, 2.3),
        _ => null,
    };

    /// <summary>"12 g", "8 pieces", "1 sheet".</summary>
    public static string Amount(double amount, string unit) =>
        string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{amount:0.##} {(unit is "piece" or "sheet" && Math.Abs(amount - 1) > 1e-9 ? unit + "s" : unit)}");

    /// <summary>"a gram", "a piece", "for 100 g".</summary>
    public static string For(int count, string unit) => count == 1
        ? unit switch { "g" => "a gram", "ml" => "a millilitre", _ => "a " + unit }
        : "for " + Amount(count, unit);
}

using Studio.Commissions;
using Studio.Engine.Custody;
using Studio.Pieces;

namespace Studio.Demo;

/// <summary>One invented commission: everything relative to the moment the demo is loaded.</summary>
/// <param name="Asked">Days ago.</param>
/// <param name="NeededIn">Days from now; null when they gave no date.</param>
/// <param name="Stands">Key of <see cref="Standing"/>.</param>
/// <param name="Price">Null: no quote. Else draft, sent or accepted.</param>
internal sealed record DemoCommission(
    string Customer, string Phone, string Title, string Remembers, string Occasion, int Asked, int? NeededIn, string Handover, string Stands, string? Price, bool DepositPaid, string Note)
{
    public IReadOnlyList<DemoKeepsake> Keepsakes { get; init; } = [];

    public DemoPiece? Piece { get; init; }
}

/// <summary>A keepsake of the demo.</summary>
/// <param name="Photo">Name of an embedded photograph without its ending; empty for none.</param>
/// <param name="Custody">here, in-piece or returned.</param>
internal sealed record DemoKeepsake(string Kind, string Description, int Count, double? MassG, string[] Condition, string Permits, string Place, string Photo, string Custody = "here");

/// <summary>A piece of the demo.</summary>
/// <param name="Stage">Key of <see cref="Making"/>.</param>
/// <param name="Pours">Hours ago of each poured layer, first layer first.</param>
internal sealed record DemoPiece(string Name, string Mould, string Stage, DemoLayer[] Layers, double[] Pours)
{
    public bool Lights { get; init; }
}

/// <summary>A layer of a piece of the demo.</summary>
/// <param name="Resin">Class of the seed resin.</param>
/// <param name="Fill">Share of the mould's height at which the layer ends.</param>
internal sealed record DemoLayer(string Name, string Resin, double Fill, string Colour, string? Pigment = null, string? Scatter = null, double ScatterMl = 0, int? Keepsake = null, double PlacedMl = 0);

/// <summary>The demo's people and pieces. All of it is invented; nobody here is real.</summary>
internal static class DemoStory
{
    // depths stay within what the typical sheets allow: 20 mm for casting resin, 50 mm for deep-pour resin
    private static readonly DemoLayer[] Heather =
    [
        new("Heather tip", "casting", 0.16, "#8d6a93", "Mica pearl pigment, heather"),
        new("Sprigs in clear", "deepPour", 0.55, "#dfe6e2", Keepsake: 0, PlacedMl: 6),
        new("Nails and clear", "casting", 0.68, "#cfd8d6", Keepsake: 1, PlacedMl: 3),
        new("Dark base", "casting", 0.84, "#3a3340", "Black pigment, carbon"),
    ];

    private static readonly DemoLayer[] Brass =
    [
        new("Sea-blue tip", "casting", 0.13, "#4d7f9b", "Liquid tint, transparent blue"),
        new("Clear below", "deepPour", 0.45, "#dbe6e8"),
        new("Brass in clear", "deepPour", 0.73, "#dfe6e2", Keepsake: 0, PlacedMl: 9),
        new("Sand", "casting", 0.82, "#c9b48a", Scatter: "Sand, washed and dry", ScatterMl: 40),
        new("Dark base", "casting", 0.92, "#2f3b42", "Black pigment, carbon"),
    ];

    private static readonly DemoLayer[] Buttons =
    [
        new("White crown", "casting", 0.18, "#eeeae2", "White pigment, titanium dioxide"),
        new("Buttons in clear", "casting", 0.42, "#e3e8e6", Keepsake: 0, PlacedMl: 5),
        new("Clear middle", "casting", 0.65, "#dfe6e2"),
        new("Clear foot", "casting", 0.85, "#e6ebe9"),
    ];

    private static readonly DemoLayer[] Dish =
    [
        new("Petals in clear", "casting", 0.60, "#e6dfe4", Keepsake: 0, PlacedMl: 2),
        new("Gold edge", "casting", 0.92, "#c79a4a", "Mica pearl pigment, gold"),
    ];

    public static IReadOnlyList<DemoCommission> All { get; } =
    [
        new("Ottoline Marsh", "01632 960101", "A pyramid with his compass card and ferry brass", "Bram, forty years a ferry pilot", "His first birthday without him", 1, 75, "collection", Standing.Asked, null, false,
            "Asks whether the brass will darken in the resin."),
        new("Per Lindqvane", "01632 960102", "A small cube with a sail needle", "Old Jory from the boat shed", "", 3, null, "delivery", Standing.Asked, null, false, "Wants to see how a sail needle would lie before deciding.")
        {
            Piece = new("Sail needle cube", "Cube 80", Making.Drawn, Buttons, []),
        },
        new("Hester Quill", "01632 960103", "A dish with petals from the allotment", "Mabel, who grew them", "Mothering Sunday", 6, 60, "collection", Standing.Quoted, "sent", false, "Prefers the petals loose, not in a pattern.")
        {
            Piece = new("Allotment dish", "Round dish 100", Making.Drawn, Dish, []),
        },
        new("Ansel Thorne", "01632 960104", "A pyramid with heather and hive nails", "Isolde, who kept the bees", "The heather honey harvest", 12, 40, "collection", Standing.Agreed, "accepted", false, "Will bring the deposit when he comes by.")
        {
            Piece = new("Hive pyramid", "Pyramid 150, middle", Making.Drawn, Heather, []) { Lights = true },
            Keepsakes = [new("dried-flower", "Heather sprigs, dried flat", 9, 4.2, [], Permissions.EmbedPart, "Drying box", "heather"), new("iron", "Hive frame nails", 6, 11.8, ["stain"], Permissions.EmbedAll, "Keepsake drawer 1", "nails")],
        },
        new("Corisande Vale", "01632 960105", "A block with her father's workshop keys", "Tobias, locksmith", "", 15, 33, "delivery", Standing.Agreed, "accepted", true, "The keys are still to come by post.")
        {
            Piece = new("Key block", "Block 150 × 100", Making.Drawn, Buttons, []),
        },
        new("Maud Ferrier", "01632 960106", "A pyramid with the pilot's brass buttons", "Captain Ewan Ferrier", "The harbour regatta", 24, 21, "collection", Standing.Making, "accepted", true, "")
        {
            Piece = new("Harbour pyramid", "Pyramid 150, low", Making.Casting, Brass, [2]),
            Keepsakes = [new("brass", "Uniform buttons, brass", 5, 32.4, [], Permissions.EmbedAll, "Bench", "brass"), new("photograph-only-copy", "Photograph on the bridge of the ferry", 1, null, ["foxing", "crack"], Permissions.CopyReturn, "Keepsake drawer 2", "ferry")],
        },
        new("Linnea Bard", "01632 960107", "A tile with a seamstress's buttons", "Great-aunt Petra", "Her shop's hundredth year", 30, 12, "collection", Standing.Making, "accepted", true, "The red button goes in the middle.")
        {
            Piece = new("Button tile", "Cube 80", Making.Casting, Buttons, [34, 10]),
            Keepsakes = [new("plastic", "Buttons from the shop's till box", 14, 18.6, [], Permissions.EmbedAll, "Bench", "buttons")],
        },
        new("Gideon Sparrow", "01632 960108", "A pyramid with heather from the moor", "Rosamund", "A year and a day", 34, 9, "delivery", Standing.Making, "accepted", true, "Call before noon.")
        {
            Piece = new("Moor pyramid", "Pyramid 100", Making.Casting, Heather, [26]),
            Keepsakes = [new("dried-flower", "Heather, a small bunch", 1, 6.1, ["brittle"], Permissions.EmbedPart, "Drying box", "heather"), new("iron", "Nails from the garden gate", 4, 7.5, ["stain"], Permissions.EmbedAll, "Keepsake drawer 1", "nails")],
        },
        new("Theodora Wick", "01632 960109", "A pyramid with lamp brass, lit from below", "Silas, the lamplighter's grandson", "", 40, 18, "collection", Standing.Making, "accepted", true, "")
        {
            Piece = new("Lamp pyramid", "Pyramid 150, tall", Making.Casting, Brass, [112, 90, 30]) { Lights = true },
            Keepsakes = [new("brass", "Lamp burner parts", 3, 41.0, ["accretion"], Permissions.EmbedPart, "Keepsake drawer 1", "brass")],
        },
        new("Ivo Larkspur", "01632 960110", "A dish with sweet peas", "Nell", "Her garden's open day", 44, 6, "collection", Standing.Making, "accepted", true, "")
        {
            Piece = new("Sweet pea dish", "Round dish 100", Making.Casting, Dish, [70, 48]),
            Keepsakes = [new("dried-flower", "Sweet peas, pressed", 12, 1.4, [], Permissions.EmbedAll, "Bench", "petals", "in-piece")],
        },
        new("Aurelia Stone", "01632 960111", "A cube with thimbles", "Winifred, seamstress", "", 52, 4, "collection", Standing.Making, "accepted", true, "")
        {
            Piece = new("Thimble cube", "Cube 80", Making.Casting, Buttons, [84, 62, 38, 14]),
            Keepsakes = [new("brass", "Thimbles", 3, 14.2, ["abrasion"], Permissions.EmbedAll, "Bench", "thimbles", "in-piece")],
        },
        new("Crispin Holloway", "01632 960112", "A pyramid with beeswax and heather", "Agnes", "", 60, 2, "delivery", Standing.Ready, "accepted", true, "Polished; waiting for the carrier on Thursday.")
        {
            Piece = new("Beeswax pyramid", "Pyramid 80", Making.Finished, Heather, [400, 378, 318, 296]),
            Keepsakes = [new("dried-flower", "Heather from the porch", 5, 2.2, [], Permissions.EmbedPart, "Keepsake drawer 2", "heather", "in-piece"), new("letter", "A letter, folded twice", 1, null, ["foxing", "tear"], Permissions.CopyReturn, "Keepsake drawer 2", "letter")],
        },
        new("Beatrix Amberley", "01632 960113", "A block with a ferry ticket punch", "Uncle Moss", "", 95, -20, "collection", Standing.Home, "accepted", true, "She wrote to say it stands in the window.")
        {
            Piece = new("Ticket punch block", "Cube 80", Making.Home, Buttons, [1440, 1418, 1396, 1374]),
            Keepsakes = [new("brass", "Ticket punch, small parts", 2, 55.0, [], Permissions.EmbedAll, "Bench", "brass", "in-piece"), new("letter", "Roll of ferry tickets", 1, 9.0, [], Permissions.CopyReturn, "Keepsake drawer 1", "letter", "returned")],
        },
        new("Rufus Penhale", "01632 960114", "A pyramid with garden glass", "Dorothea", "", 80, null, "collection", Standing.LetGo, "sent", false, "Decided to keep the glass as it is.")
        {
            Piece = new("Garden glass pyramid", "Pyramid 60", Making.LetGo, Dish, []),
        },
    ];
}

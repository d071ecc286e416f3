using System.Globalization;
using SkiaSharp;
using Studio.Bench;
using Studio.Keepsakes;
using Studio.Papers;
using Studio.Quotes;

namespace Studio.Tests.Papers;

/// <summary>Invented papers that the tests read: a beekeeper's heather and hive nails.</summary>
internal static class PaperSamples
{
    public static readonly DateTime Now = new(2026, 3, 5, 14, 10, 20, DateTimeKind.Utc);

    public static readonly PaperFormat Format = new(CultureInfo.GetCultureInfo("en-GB"), "GBP", 2, TimeZoneInfo.FindSystemTimeZoneById("Europe/London"));

    public static readonly PaperLetterhead Studio = new("Hollow Lane Studio", ["3 Hollow Lane", "Inverpelling PX9 4QT"], "hello@hollowlane.example", "01632 960 142");

    public static readonly PaperPerson Owner = new("Ailsa Brodie", ["The Bee House", "Upper Pelling"], "01632 960 177", "ailsa@bees.example");

    /// <summary>A half-cut pyramid of five layers, point down as it is poured; one layer may be marked.</summary>
    public static PaperDrawing Section(int? marked = null)
    {
        string[] names = ["Dark earth", "Clear with the heather", "Clear with the photograph", "Amber with the hive nails", "Pearl base"];
        string[] fills = ["#5B4636", "#E9E4D6", "#F1EEE6", "#D9A24E", "#E6E2EC"];
        double[] to = [22, 52, 84, 104, 120];
        var shapes = new List<PaperShape>();
        var from = 0.0;
        for (var i = 0; i < names.Length; i++)
        {
            shapes.Add(new PaperPolygon([At(-1, from), At(1, from), At(1, to[i]), At(-1, to[i])], fills[i], marked == i ? PaperPattern.Hatch : PaperPattern.None, "#1F2B33", marked == i ? 1.2 : 0.4));
            from = to[i];
        }

        shapes.Add(new PaperPolygon([At(-1, 0), At(1, 120), At(-1, 120)], null, PaperPattern.None, "#1F2B33", 1.2));
        from = 0;
        for (var i = 0; i < names.Length; i++)
        {
            var middle = (from + to[i]) / 2;
            shapes.Add(new PaperLabel(new PaperPoint(At(1, middle).XMm * 0.8, middle), names[i], marked == i));
            from = to[i];
        }

        return new PaperDrawing(shapes, "Section through the pyramid, five layers from the point up: " + string.Join(", ", names));

        static PaperPoint At(int side, double z) => new(side * z * 75 / 120, z);
    }

    public static QuotePaperModel Quote() => new()
    {
        Studio = Studio,
        Format = Format,
        Number = "Q-26-0012",
        WrittenUtc = Now,
        For = Owner,
        Remembers = "Hamish Brodie",
        Message = "Thank you for the afternoon among the hives, and for lending us the heather. This is how we would set it. The drawing shows the pyramid cut through the middle, standing on its point as we pour it.",
        Pieces = [new("Pyramid with heather and hive nails", "Five layers, clear enough in the middle that the photograph seems to float.", "150 × 150 mm at the base, 120 mm high", ["sprigs of heather from the south slope", "the photograph of Hamish at the gate, copied on film", "seven hive nails", "a little of the earth from under the hives"], Section())],
        Included = ["Preparing and drying the heather", "Copying the photograph", "A felt foot and a box to keep it in", "One visit to look at the piece before it is finished"],
        Delivery = "We bring it to you ourselves.",
        Net = 400m,
        TaxName = "VAT",
        TaxPercent = 20,
        Tax = 80m,
        Total = 480m,
        Deposit = 144m,
        Balance = 336m,
        ValidUntil = new DateOnly(2026, 4, 4),
        NeededBy = new DateOnly(2026, 6, 12),
        PromiseOn = new DateOnly(2026, 6, 20),
        Keepsakes = [new("Heather, a bunch", "dried, and the best sprigs set whole; the rest comes back", "KS-26-00042-H"), new("Photograph at the gate", "copied on film; the photograph itself comes back untouched", "KS-26-00043-F"), new("Hive nails, seven", "cleaned of loose rust and set")],
        HasLights = true,
        HasButtonCells = true,
    };

    public static ReceiptPaperModel Receipt(int count = 3) => new()
    {
        Studio = Studio,
        Format = Format,
        Commission = "C-26-017",
        Remembers = "Hamish Brodie",
        Owner = Owner,
        Depositor = new PaperPerson("Rory Brodie", ["14 Ferry Road", "Pelling"], "01632 960 188"),
        DepositorAuthority = "Grandson, with the owner's written word",
        WrittenUtc = Now,
        Reason = "To be set in a memorial piece",
        OwnersRequirements = "The photograph must not be trimmed.",
        ReturnBy = new DateOnly(2026, 6, 30),
        Keepsakes = [.. Enumerable.Range(1, count).Select(Keepsake)],
    };

    public static ReceiptPaperKeepsake Keepsake(int n) => new()
    {
        EntryNumber = string.Create(CultureInfo.InvariantCulture, $"KS-26-{n:D5}-H"),
        Kind = n % 3 == 0 ? "Photograph" : n % 3 == 1 ? "Heather" : "Hive nails",
        Description = n % 3 == 0 ? "black and white, a man at a gate, deckled edge" : n % 3 == 1 ? "a bunch tied with blue wool" : "forged, square shank, about 60 mm",
        Count = n % 3 == 2 ? 7 : 1,
        MassG = n % 3 == 2 ? 48.2 : null,
        Condition = n % 3 == 0 ? "Good. Crease at the lower left corner, light foxing." : n % 3 == 1 ? "Fair. Brittle, some loss of flowers." : "Rust accretion on all, one bent",
        Completeness = n % 3 == 0 ? "Complete" : "",
        Came = "Came by hand on 2 March, brought by Rory Brodie (grandson), taken in by Edda Marsh; packed in a shoe box.",
        Since = n == 3 ? "Since then: 1 piece went back on 20 March 2026 with Rory Brodie." : null,
        Permission = n % 3 == 0 ? "Copy it and return it." : n % 3 == 1 ? "Set a part, return the rest." : "All of it may be set.",
        ThumbnailJpeg = Jpeg(n % 3 == 1 ? 240 : 160, n % 3 == 1 ? 160 : 200, n),
    };

    public static LabelPaperModel Labels(int count = 3, int start = 1, LabelGrid? grid = null) => new()
    {
        Studio = Studio,
        MadeUtc = Now,
        Grid = grid,
        StartAtCell = start,
        Labels = [.. Enumerable.Range(1, count).Select(n => new LabelPaperLabel(Keepsake(n).EntryNumber, "https://studio.example/k/" + Keepsake(n).EntryNumber, Keepsake(n).Kind + ", " + Keepsake(n).Description, "C-26-017, Brodie"))],
    };

    public static PourPaperModel PourSheet() => new()
    {
        Studio = Studio,
        Format = Format,
        MadeUtc = Now,
        Piece = "Pyramid with heather",
        Commission = "C-26-017",
        LayerName = "clear with the photograph",
        LayerNumber = 3,
        LayerCount = 5,
        Section = Section(2),
        Resin = "Deep-pour resin, clear",
        Mix = "100 : 45 by weight",
        DataSheet = "Sheet of May 2025: greatest depth 50 mm, batch up to 500 g",
        FromMm = 52,
        ToMm = 84,
        DepthMm = 32,
        FaceMarkMm = 99.1,
        MixG = 812.4,
        MixSpreadG = 14.2,
        SpreadRestsOn = "± rests on the mould’s water check: its volumes are sure to ± 1.7\u00a0%.",
        Tilt = new(150, 0.5, 0.19099, 0.33333),
        PotLifeMinutes = 90,
        Batches = [new(280.1, 126.1), new(280.1, 126.1)],
        With =
        [
            new("Stir in", "Pearl powder, white", 0.82, "", []),
            new("Scatter", "Dried heather flowers", 4.5, "sprinkle when the resin stops running", []),
            new("Film", "The photograph “gate”", null, "from 15 mm to 78 mm", ["Pour to the foot of the picture first: stop at 212.0 g in the mould, at 15 mm. Set it in, then pour the rest of the layer.", "It goes on above this layer, up to 78 mm."]),
        ],
        Prepare = ["Film sealed and dry, cut to the paper template", "Former in its place, waxed", "Two cups of 600 ml, stirring sticks, timer"],
        Cautions = ["The film lifts when resin runs beneath it: pin the tab first."],
        Times = new PourPaperTimes("Printed in the data sheet for 23 °C; a colder room takes longer.") { NextPourFromHours = 48, NextPourUntilHours = 72, DemouldHours = 120 },
    };

    /// <summary>A plain photograph made here: a gradient with a disc.</summary>
    public static byte[] Jpeg(int width, int height, int seed = 1)
    {
        using var bitmap = new SKBitmap(width, height);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColor.FromHsl(seed * 47 % 360, 30, 70));
        using var paint = new SKPaint { Color = SKColor.FromHsl(seed * 91 % 360, 40, 40), IsAntialias = true };
        canvas.DrawCircle(width / 2f, height / 2f, Math.Min(width, height) / 3f, paint);
        using var image = SKImage.FromBitmap(bitmap);
        return image.Encode(SKEncodedImageFormat.Jpeg, 85).ToArray();
    }

    /// <summary>Only what must be there.</summary>
    public static QuotePaperModel BareQuote() => new()
    {
        Studio = new PaperLetterhead("Studio", []),
        Format = Format with { Culture = CultureInfo.GetCultureInfo("de-DE"), Currency = "JPY", CurrencyDigits = 0 },
        Number = "1",
        WrittenUtc = Now,
        For = new PaperPerson("Noor", []),
        Pieces = [new("Block", null, null, [])],
        Net = 80000m,
        Total = 80000m,
    };

    /// <summary>Long names, letters beyond Latin-1, marks that XML minds, and more pieces than a page holds.</summary>
    public static QuotePaperModel OddQuote() => Quote() with
    {
        For = new PaperPerson("Ada & Co <x>, Frau Őry-Łukaszewicz and the Wolfeschlegelsteinhausenbergerdorffvoralternwarengewissenhaftschaferswessen family", ["100 % Ulica Żółwia 7", "Łódź"]),
        Remembers = "Ελένη Παπαδοπούλου and Фёдор Ильич",
        Pieces = [.. Enumerable.Range(1, 6).Select(n => new QuotePaperPiece($"Piece {n}", null, "60 × 60 × 40 mm", ["buttons", "a thread of blue silk"], n % 2 == 0 ? Section() : null, n, 40m * n))],
        Total = 1234567.89m,
        State = "Sent on 5 March 2026",
        DrawnAgain = QuotePaperBook.DrawnAgain("6 March 2026"),
        DeliveryPrice = 12m,
        CellsNotSettled = ["String of lamps"],
    };

    public static ReceiptPaperModel BareReceipt() => new()
    {
        Studio = new PaperLetterhead("Studio", []),
        Format = Format,
        Commission = "1",
        Owner = new PaperPerson("Noor", []),
        WrittenUtc = Now,
        Keepsakes = [new() { EntryNumber = "KS-26-00001-A", Kind = "Buttons", Permission = "Return it untouched.", ThumbnailJpeg = [1, 2, 3] }],
    };

    public static PourPaperModel BarePourSheet() => new()
    {
        Studio = new PaperLetterhead("Studio", []),
        Format = Format with { Inches = true, Culture = CultureInfo.GetCultureInfo("en-US") },
        MadeUtc = Now,
        Piece = "Block",
        Commission = "1",
        LayerName = "clear",
        LayerNumber = 1,
        LayerCount = 1,
        Resin = "Casting resin",
        ToMm = 25.4,
        FaceMarkMm = 25.4,
        MixG = 1450,
        Batches = [new(1000, 450)],
        Times = new PourPaperTimes("By the room's reading of 13:50, 19.5 °C.") { StartUtc = Now, NextPourFromUtc = Now.AddHours(6), NextPourUntilUtc = Now.AddHours(12), DemouldUtc = Now.AddHours(30) },
    };

    /// <summary>Twelve batches, fourteen thin dark layers and long names.</summary>
    public static PourPaperModel LongPourSheet() => PourSheet() with
    {
        LayerName = "black with the very fine brass filings from the ferry's old wheelhouse, settled twice",
        Section = Stack(14, 9),
        Batches = [.. Enumerable.Repeat(new PourPaperBatch(1280.1, 612.4), 12)],
        MixG = 22710,
        With = [.. Enumerable.Range(1, 6).Select(n => new PourPaperRow("Set by hand", $"Brass plate {n}", 12.5 * n, "KS-26-00043-F", []))],
        Cautions = [.. Enumerable.Repeat("Heat builds up in a layer of this depth; the data sheet allows 50 mm and 500 g, so pour it in batches and let each cool.", 4)],
    };

    private static PaperDrawing Stack(int layers, int marked) => new(
        [
            .. Enumerable.Range(0, layers).Select(n => (PaperShape)new PaperPolygon(
                [new(-50, n * 5), new(50, n * 5), new(50, (n * 5) + 5), new(-50, (n * 5) + 5)], n % 2 == 0 ? "#20262B" : "#5B4636", n == marked ? PaperPattern.CrossHatch : n % 3 == 0 ? PaperPattern.Dots : PaperPattern.None, "#1F2B33")),
            .. Enumerable.Range(0, layers).Select(n => (PaperShape)new PaperLabel(new(50, (n * 5) + 2.5), $"{n + 1}  a layer with a name, {n * 5} to {(n * 5) + 5} mm", n == marked)),
        ],
        "Fourteen thin layers");
}

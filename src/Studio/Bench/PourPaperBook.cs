using System.Globalization;
using Studio.Clock;
using Studio.Drawing;
using Studio.Heat;
using Studio.Papers;
using Studio.Settings;

namespace Studio.Bench;

/// <summary>A pour sheet ready to be opened or printed.</summary>
public sealed record PourPaperFile(byte[] Content, string FileName);

/// <summary>Shapes what the bench knows of a layer for its pour sheet.</summary>
public sealed class PourPaperBook(BenchBook bench, PourHeatBook heats, SettingsBook settingsBook)
{
    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    /// <summary>The sheet; null when there is no such piece or layer, or its design has errors.</summary>
    /// <param name="pieceId">The piece.</param>
    /// <param name="layerNumber">Counted from 1 in pouring order.</param>
    public async Task<PourPaperFile?> SheetAsync(int pieceId, int layerNumber)
    {
        if (await bench.ReadAsync(pieceId) is not { } sheet || sheet.Layers.ElementAtOrDefault(layerNumber - 1) is not { Plan: { } plan } layer)
        {
            return null;
        }

        var settings = await settingsBook.ReadAsync();
        var house = PaperHouse.Of(settings);
        var model = new PourPaperModel
        {
            Studio = house.Letterhead,
            Format = house.Format,
            MadeUtc = sheet.Now,
            Piece = sheet.PieceName,
            Commission = sheet.CommissionNumber,
            LayerName = layer.Name,
            LayerNumber = layerNumber,
            LayerCount = sheet.Layers.Count,
            Section = BenchSection.Of(sheet, layer) is { } section ? SectionPaper.Of(section) : null,
            Resin = layer.Resin.Name,
            Mix = layer.Resin.Mix,
            DataSheet = layer.Resin.SheetNote,
            FromMm = plan.FromMm,
            ToMm = plan.ToMm,
            DepthMm = plan.DepthMm,
            FaceMarkMm = plan.FaceMarkMm,
            MixG = plan.MixG,
            MixSpreadG = plan.MixSpreadG,
            SpreadRestsOn = Pieces.SpreadWords.RestsOn(plan, sheet.Mould.VolumeSpreadPercent, settings.Units),
            Tilt = layer.Tilt,
            PotLifeMinutes = layer.Resin.PotLifeMinutes,
            Batches = [.. plan.Batches.Select(b => new PourPaperBatch(b.PartAG, b.PartBG))],
            With = [.. layer.Things.Select(Row)],
            Prepare = [.. layer.Things.Where(t => t.Need is not null).Select(t => $"{t.EntryNumber} {t.Name}: {t.Need!.Message}")],
            Cautions = [.. layer.Cautions.Select(c => c.Message)],
            Times = Times(sheet, layer),
            Heat = await HeatAsync(sheet, layer),
        };
        return new(PourPaper.Create(model, house.Size), string.Create(CultureInfo.InvariantCulture, $"pour-{sheet.CommissionNumber}-layer-{layerNumber}.pdf"));
    }

    private static PourPaperRow Row(BenchThing thing) =>
        new(BenchThingList.What(thing), thing.Name, thing.Grams, string.Join(", ", new[] { thing.EntryNumber, thing.Where, thing.Grams is null ? thing.Amount : "" }.Where(t => t.Length > 0)), thing.Notes);

    // poured: as it was foretold then; not yet: as it would be now
    private async Task<PourPaperHeat> HeatAsync(BenchView sheet, BenchLayer layer)
    {
        if (sheet.Pours.LastOrDefault(p => !p.Withdrawn && p.LayerOrder == layer.Order) is { } pour)
        {
            return pour.Foretold is { } kept
                ? Heat(kept, layer.Limit, $", about {Shell.Say.When(pour.StartedAt.AddHours(kept.PeakAfterHours), sheet.Zone, sheet.Now)}", "Model: " + kept.Model + ".")
                : new("Its heat was not foretold when it was poured.", "", "");
        }

        var told = await heats.AskAsync(heats.Asked(sheet.PieceId, layer.LayerId, null, null, layer.Resin.LastLot), CancellationToken.None);
        return told switch
        {
            { Unknown.Length: > 0 } => new($"Its heat is not foretold. {told.Unknown}", "", "The data sheet’s depth and hours hold."),
            { RunAway: true } => new("Run-away: do not pour.", told.Findings[0].Message, told.RestsOn),
            { Foretold: null } => new("It may run away: do not pour before that is ruled out.", told.Findings[0].Message, told.RestsOn),
            _ => Heat(told.Foretold!, layer.Limit, string.Create(English, $", about {told.Foretold!.PeakAfterHours:0.#} hours after the pour"), string.Join(" ", told.Findings.Select(f => f.Message).Append(told.RestsOn))),
        };
    }

    private static PourPaperHeat Heat(PourForetold told, Engine.Forecast.HeatLimit? limit, string when, string restsOn) => new(
        string.Create(English, $"Should reach {told.PeakC:0} °C, {told.PeakLowC:0} to {told.PeakHighC:0} °C nine times in ten{when}."), BenchCautions.Hotter(told.PeakHighC, limit), restsOn);

    // poured: the clock's own instants; not yet: the hours that the sheet prints
    private static PourPaperTimes? Times(BenchView sheet, BenchLayer layer)
    {
        var above = sheet.Layers.Any(l => l.Order > layer.Order);
        if (sheet.Times.Layers.FirstOrDefault(t => t.Order == layer.Order) is { } times)
        {
            return new(times.From.RestsOn)
            {
                StartUtc = times.StartedAt,
                NextPourFromUtc = times.From.At,
                NextPourUntilUtc = times.Until.At,
                DemouldUtc = times.Demould.At,
                LayersAbove = above,
            };
        }

        // the clock's own hours where the room is known, so that paper and shelf say the same; else the sheet's
        if (sheet.IfPouredNow(layer.Order) is { From.At: not null } now)
        {
            double? After(ClockTime time) => time.At is { } at ? (at - now.StartedAt).TotalHours : null;
            return new($"If it is poured in the room as it is. {now.From.RestsOn} A colder room takes longer: the clock on the bench says when.")
            {
                NextPourFromHours = After(now.From),
                NextPourUntilHours = After(now.Until),
                DemouldHours = After(now.Demould),
                LayersAbove = above,
            };
        }

        return layer.Resin.Printed is not { } printed ? null : new(string.Create(English, $"Printed for {printed.AtCelsius:0.#} °C; a colder room takes longer. The clock on the bench says when."))
        {
            NextPourFromHours = printed.NextPourFromHours,
            NextPourUntilHours = printed.NextPourUntilHours,
            DemouldHours = printed.DemouldHours,
            LayersAbove = above,
        };
    }
}

using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Data.Files;
using Studio.Engine.Custody;
using Studio.Engine.Layers;
using Studio.Film;
using Studio.Keepsakes;
using Studio.Money;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Resins;
using Studio.Settings;
using Studio.Stores;

namespace Studio.Demo;

/// <summary>Writes the demo's stories into an empty database.</summary>
internal sealed class DemoTeller(StudioDb db, StudioSettings settings, DateTime now, string by)
{
    private List<Moulds.Mould> moulds = [];
    private List<Resin> resins = [];
    private List<Material> materials = [];
    private PhotoStore? photos;
    private FilmPicture? picture;
    private int running;
    private readonly Dictionary<int, List<KeepsakeEvent>> logs = [];

    public async Task StartAsync(IServiceProvider services)
    {
        photos = services.GetService<PhotoStore>();
        moulds = await db.Set<Moulds.Mould>().ToListAsync();
        resins = await db.Set<Resin>().OrderBy(r => r.Id).ToListAsync();
        materials = await db.Set<Material>().ToListAsync();
    }

    public async Task TellAsync(DemoCommission story)
    {
        var asked = now.AddDays(-story.Asked).AddHours(-2);
        var commission = new Commission
        {
            Number = string.Create(CultureInfo.InvariantCulture, $"{now:yy}-{db.ChangeTracker.Entries<Commission>().Count() + 1:000}"),
            Customer = new Customer
            {
                Name = story.Customer,
                Phone = story.Phone,
                Email = story.Customer.Split(' ')[0].ToLowerInvariant() + "@post.example",
                Address = "Quay Lane",
                CreatedAt = asked,
            },
            Title = story.Title,
            Remembers = story.Remembers,
            Occasion = story.Occasion,
            NeededBy = story.NeededIn is { } days ? DateOnly.FromDateTime(now).AddDays(days) : null,
            Handover = story.Handover,
            Notes = story.Note,
            Stands = story.Stands,
            CreatedAt = asked,
        };
        db.Add(commission);
        await db.SaveChangesAsync();
        Say(commission, asked, "stands", $"{story.Customer} asked for it.");
        var keepsakes = new List<Keepsake>();
        picture = null;
        foreach (var k in story.Keepsakes)
        {
            keepsakes.Add(await KeepsakeAsync(commission, k, asked.AddDays(4)));
        }

        if (story.Piece is { } piece)
        {
            var made = Piece(commission, piece, keepsakes);
            await db.SaveChangesAsync();
            await PoursAsync(made, piece, keepsakes, story.Keepsakes);
            await PriceAsync(commission, made, story, asked);
        }

        await db.SaveChangesAsync();
    }

    private void Say(Commission commission, DateTime at, string kind, string words) =>
        db.Add(new CommissionEvent { CommissionId = commission.Id, At = at, By = by, Kind = kind, Words = words });

    private async Task<Keepsake> KeepsakeAsync(Commission commission, DemoKeepsake story, DateTime at)
    {
        var keepsake = new Keepsake
        {
            EntryNumber = EntryNumber.Create(now.Year, ++running).ToString(),
            CommissionId = commission.Id,
            Kind = story.Kind,
            Description = story.Description,
            Count = story.Count,
            MassG = story.MassG,
            ConditionWords = [.. story.Condition],
            Permits = story.Permits,
            ReceivedAt = at,
            SubmitKey = "demo-" + running.ToString(CultureInfo.InvariantCulture),
        };
        db.Add(keepsake);
        var counter = await db.Set<EntryCounter>().FindAsync(now.Year);
        if (counter is null)
        {
            db.Add(counter = new EntryCounter { Id = now.Year });
        }

        counter.Last = running;
        await db.SaveChangesAsync();
        Log(keepsake, new KeepsakeEvent { At = at, Kind = CustodyKind.Received, Place = story.Place, Count = story.Count, MassG = story.MassG, Whom = commission.Customer!.Name, Words = "by hand" });
        if (story.Custody is CustodyWhereabouts.Returned)
        {
            Log(keepsake, new KeepsakeEvent { At = now.AddDays(-18), Kind = CustodyKind.Returned, Count = story.Count, MassG = story.MassG, Whom = commission.Customer.Name });
        }

        await PhotoAsync(keepsake, story.Photo, at);
        return keepsake;
    }

    private void Log(Keepsake keepsake, KeepsakeEvent entry)
    {
        (entry.KeepsakeId, entry.By) = (keepsake.Id, by);
        db.Add(entry);
        logs.TryAdd(keepsake.Id, []);
        logs[keepsake.Id].Add(entry);
        CustodyLog.Follow(keepsake, logs[keepsake.Id]);
    }

    private async Task PhotoAsync(Keepsake keepsake, string name, DateTime at)
    {
        await using var file = typeof(DemoTeller).Assembly.GetManifestResourceStream($"demo/{name}.jpg");
        if (photos is null || file is null)
        {
            return;
        }

        var kept = await photos.AddAsync(file, name + ".jpg");
        if (kept.Photo is { } photo)
        {
            db.Add(new Photo
            {
                Hash = photo.Hash,
                KeepsakeId = keepsake.Id,
                FileName = name + ".jpg",
                WidthPx = photo.WidthPx,
                HeightPx = photo.HeightPx,
                Bytes = photo.Bytes,
                AddedAt = at,
                AddedBy = by,
            });
            // of an only copy, a copy goes on film
            picture = keepsake.Kind is "photograph-only-copy" ? new(photo.Hash, photo.WidthPx, photo.HeightPx, keepsake.EntryNumber) : picture;
        }
    }

    private Piece Piece(Commission commission, DemoPiece story, List<Keepsake> keepsakes)
    {
        var mould = moulds.First(m => m.Name == story.Mould);
        var height = mould.Dimensions["heightMm"];
        var piece = new Piece
        {
            CommissionId = commission.Id,
            Name = story.Name,
            MouldId = mould.Id,
            Mould = mould,
            Stage = story.Stage,
            WastePercent = settings.WastePercent,
            WastePerBatchG = settings.WastePerBatchG,
            CreatedAt = commission.CreatedAt.AddDays(1),
            FinishedAt = story.Stage is Making.Finished or Making.Home ? now.AddDays(-3) : null,
            DemouldedAt = story.Stage is Making.Finished or Making.Home ? now.AddDays(-6) : null,
            Tasks = [new("Prepare keepsakes and mould", 40), new("Pour and tend", 20d * story.Layers.Length) { Pours = true }, new("Sand, polish and finish", 75)],
            Former = story.Lights ? new FormerSpec { OuterWidthMm = 44, OuterDepthMm = 44, FromMm = Math.Round(height * 0.74), WallMm = 3, FloorMm = Math.Round(height * 0.78) } : null,
            Fittings = story.Lights ? [Fitting("Light string, 20 lights, warm white, for two AA cells", 1), Fitting("AA cell, alkaline (LR6)", 2)] : [],
        };
        foreach (var (layer, order) in story.Layers.Select((l, i) => (l, i)))
        {
            piece.Layers.Add(Layer(layer, order, height, keepsakes));
        }

        if (picture is not null && LayersCalculation.Run(PieceBook.Design(piece)) is { Ok: true } computed)
        {
            piece.Sheets.Add(FilmStart.In(piece, computed.Value) with { Picture = picture });
        }

        db.Add(piece);
        return piece;
    }

    private PieceFitting Fitting(string name, double count) => new(materials.FirstOrDefault(m => m.Name == name)?.Id, name, count);

    private PieceLayer Layer(DemoLayer story, int order, double heightMm, List<Keepsake> keepsakes)
    {
        var resin = resins.First(r => r.Class == story.Resin);
        var pigment = materials.FirstOrDefault(m => m.Name == story.Pigment);
        var scatter = materials.FirstOrDefault(m => m.Name == story.Scatter);
        var keepsake = story.Keepsake is { } k && k < keepsakes.Count && Permissions.For(keepsakes[k].Permits).ThingMayBeCast ? keepsakes[k] : null;
        return new PieceLayer
        {
            Order = order,
            Name = story.Name,
            ResinId = resin.Id,
            Resin = resin,
            ToMm = Math.Round(heightMm * story.Fill),
            Colour = story.Colour,
            Additions = pigment is { DensityGPerMl: { } d } ? [new(pigment.Id, pigment.Name, 1.5, d)] : [],
            Scatter = scatter is { DensityGPerMl: { } density } ? [new(scatter.Id, scatter.Name, Math.Round(story.ScatterMl * density * (scatter.PackingFraction ?? 0.6)), density, null, scatter.PackingFraction)] : [],
            Placed = keepsake is null ? [] : [new(keepsake.Id, keepsake.Description, null, null, story.PlacedMl)],
        };
    }

    private async Task PoursAsync(Piece piece, DemoPiece story, List<Keepsake> keepsakes, IReadOnlyList<DemoKeepsake> told)
    {
        var computed = LayersCalculation.Run(PieceBook.Design(piece));
        foreach (var (hours, order) in story.Pours.Select((h, i) => (h, i)))
        {
            var layer = piece.Layers[order];
            var grams = computed.Value.Layers[order];
            var resin = layer.Resin!;
            var pour = new Pour
            {
                PieceId = piece.Id,
                LayerId = layer.Id,
                LayerOrder = order,
                LayerName = layer.Name,
                ResinId = resin.Id,
                ResinName = resin.Name,
                ResinLot = "L" + (240 + order).ToString(CultureInfo.InvariantCulture),
                Colour = layer.Colour,
                FromMm = grams.FromMm,
                ToMm = grams.ToMm,
                PlannedAG = grams.PartAG,
                PlannedBG = grams.PartBG,
                ActualAG = Math.Round(grams.PartAG, 1),
                ActualBG = Math.Round(grams.PartBG, 1),
                Batches = grams.Batches.Count,
                RoomC = 21,
                StartedAt = now.AddHours(-hours),
                By = by,
                Sheet = resin.Sheet,
                SubmitKey = string.Create(CultureInfo.InvariantCulture, $"demo-{piece.Id}-{order}"),
            };
            db.Add(pour);
            await db.SaveChangesAsync();
            foreach (var id in layer.Placed.Select(p => p.KeepsakeId).OfType<int>())
            {
                SetIn(keepsakes.Find(k => k.Id == id)!, told[keepsakes.FindIndex(k => k.Id == id)], piece, layer, pour);
            }
        }
    }

    // where a part is permitted, a third of it went in
    private void SetIn(Keepsake keepsake, DemoKeepsake story, Piece piece, PieceLayer layer, Pour pour)
    {
        var part = Permissions.For(keepsake.Permits).MayCast == CastShare.Part;
        Log(keepsake, new KeepsakeEvent
        {
            At = pour.StartedAt,
            Kind = CustodyKind.SetIn,
            Count = part ? story.Count > 1 ? Math.Max(1, story.Count / 3) : 0 : story.Count,
            MassG = part ? story.MassG is { } g ? Math.Round(g / 3, 1) : null : story.MassG,
            Place = part ? story.Place : "",
            PieceId = piece.Id,
            LayerId = layer.Id,
            PourId = pour.Id,
        });
    }

    private async Task PriceAsync(Commission commission, Piece piece, DemoCommission story, DateTime asked)
    {
        if (story.Price is null)
        {
            return;
        }

        var quote = QuoteDraft.From(piece, commission, settings, resins, materials);
        quote.CreatedAt = asked.AddDays(2);
        quote.SentAt = asked.AddDays(2);
        quote.ValidUntil = DateOnly.FromDateTime(now.AddDays(story.Price is "sent" ? 20 : 5));
        quote.State = story.Price;
        Say(commission, asked.AddDays(2), "quote", "The price was sent.");
        if (story.Price is "accepted")
        {
            quote.AcceptedAt = asked.AddDays(3);
            quote.AcceptedBy = story.Customer;
            quote.AcceptedHow = "by e-mail";
            Say(commission, asked.AddDays(3), "quote", $"{story.Customer} said yes by e-mail.");
        }

        db.Add(quote);
        await db.SaveChangesAsync();
        if (story.DepositPaid && quote.Result is { } result)
        {
            db.Add(new Payment { CommissionId = commission.Id, QuoteId = quote.Id, Amount = result.Deposit, Currency = quote.Currency, PaidAt = asked.AddDays(4), How = "bank transfer", By = by, SubmitKey = "demo-" + commission.Number });
            Say(commission, asked.AddDays(4), "payment", "The deposit came by bank transfer.");
        }
    }
}

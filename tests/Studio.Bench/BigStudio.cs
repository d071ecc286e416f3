using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Bench.Tools;

/// <summary>A studio after a very long life: 10,000 pieces, 50,000 keepsakes, 18 pieces in the making, what two hands can tend. Invented, for measuring only.</summary>
internal static class BigStudio
{
    public const int Pieces = 10_000;
    public const int Keepsakes = 50_000;

    public static async Task MakeAsync(string folder)
    {
        var factory = Writer.Open(folder);
        await using (var db = await factory.CreateDbContextAsync())
        {
            await db.Database.MigrateAsync();
            await new Stores.CatalogueSeed().PlantAsync(db);
        }

        await using var connection = new SqliteConnection($"Data Source={DataSetup.DatabaseFile(folder)}");
        await connection.OpenAsync();
        await using var transaction = await connection.BeginTransactionAsync();
        foreach (var sql in Rows())
        {
            await using var command = connection.CreateCommand();
            command.CommandText = sql;
            await command.ExecuteNonQueryAsync();
        }

        await transaction.CommitAsync();
        await using var analyze = connection.CreateCommand();
        analyze.CommandText = "analyze";
        await analyze.ExecuteNonQueryAsync();
    }

    private static IEnumerable<string> Rows()
    {
        var now = TimeProvider.System.GetUtcNow().UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", System.Globalization.CultureInfo.InvariantCulture);
        const string Numbers = "with recursive n(i) as (select 1 union all select i + 1 from n where i < ";
        yield return $"{Numbers}2000) insert into Customer (Id, Name, Email, Phone, Address, Notes, CreatedAt, Version) select i, 'Customer ' || i, '', '', '', '', '{now}', 0 from n";
        yield return $"{Numbers}{Pieces}) insert into \"Commission\" (Id, Number, CustomerId, Title, Remembers, Occasion, Handover, DeliveryAddress, Notes, Stands, CreatedAt, Version) " +
            $"select i, printf('%05d', i), 1 + i % 2000, 'A piece', 'Somebody', '', 'collection', '', '', case when i > {Pieces - 24} then 'making' else 'home' end, '{now}', 0 from n";
        yield return $"{Numbers}{Pieces}) insert into Piece (Id, CommissionId, Name, MouldId, Fittings, Tasks, WastePercent, WastePerBatchG, Stage, ClockSaid, Notes, CreatedAt, Version) " +
            $"select i, i, 'Piece ' || i, 1 + i % 12, '[]', '[]', 3, 5, case when i > {Pieces - 12} then 'casting' when i > {Pieces - 14} then 'demoulded' when i > {Pieces - 18} then 'drawn' else 'home' end, '', '', '{now}', 0 from n";
        yield return $"{Numbers}{Pieces * 4}) insert into PieceLayer (Id, PieceId, \"Order\", Name, ResinId, ToMm, Colour, Additions, Scatter, Placed) " +
            "select i, 1 + (i - 1) / 4, (i - 1) % 4, 'Layer', 1 + i % 4, 10 + 2 * ((i - 1) % 4), '#cfd8d6', '[]', '[]', '[]' from n";
        yield return $"{Numbers}{Pieces * 3}) insert into Pour (PieceId, LayerId, LayerOrder, LayerName, ResinId, ResinName, ResinLot, Colour, FromMm, ToMm, PlannedAG, PlannedBG, ActualAG, ActualBG, Batches, Tally, StartedAt, \"By\", Sheet, Withdrawn, SubmitKey, Version) " +
            $"select 1 + (i - 1) / 3, 1 + (i - 1) / 3 * 4 + (i - 1) % 3, (i - 1) % 3, 'Layer', 1, 'Resin', '', '#cfd8d6', 0, 10, 100, 50, 100, 50, 1, '[]', datetime('{now}', '-' || (10 + 3 * ((i * 7) % 24)) || ' hours'), 'maker', " +
            "'{\"times\":[{\"atCelsius\":23,\"gelHours\":3,\"nextPourFromHours\":6,\"nextPourUntilHours\":24,\"demouldHours\":24,\"fullCureHours\":168}],\"factorPer10C\":2}', 0, 'k' || i, 0 from n " +
            $"where 1 + (i - 1) / 3 <= {Pieces}";
        yield return $"{Numbers}{Keepsakes}) insert into Keepsake (Id, EntryNumber, CommissionId, Kind, Description, Count, ConditionWords, ConditionNote, Permits, Place, Custody, Method, Requirements, DepositorName, DepositorAuthority, Packing, ReceivedAt, SubmitKey, Version) " +
            $"select i, 'KS-26-' || i, 1 + (i - 1) / 5, 'iron', 'Nails', 1, '[]', '', 'embed-all', 'Drawer', 'here', 'by hand', '', '', '', '', '{now}', 's' || i, 0 from n";
        yield return $"{Numbers}2000) insert into Reading (At, Place, Celsius, \"By\", Withdrawn) select datetime('{now}', '-' || (i * 4) || ' hours'), 'Workshop', 21, 'maker', 0 from n";
    }
}

using Microsoft.Data.Sqlite;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Engine.Layers;
using Studio.Pieces;

namespace Studio.Bench.Tools;

/// <summary>The shelf's data as one would read it by hand: four statements on one connection, the same columns, the same JSON.</summary>
internal static class HandWritten
{
    public static int Read(SqliteConnection db)
    {
        var count = 0;
        var ids = new List<long>();
        Each(db, "select p.Id, p.Name, p.Stage, p.DemouldedAt, p.Former, p.Tasks, m.Shape, m.Dimensions, p.CommissionId, c.Number, c.Remembers, c.Stands, c.NeededBy, " +
            "case when p.Stage = 'drawn' then (select count(*) from Keepsake k where k.CommissionId = p.CommissionId) else 0 end, " +
            "case when p.Stage <> 'drawn' then 1 else exists (select 1 from Payment y where y.CommissionId = p.CommissionId and not y.Withdrawn and y.Kind = 'deposit') end " +
            "from Piece p join \"Commission\" c on c.Id = p.CommissionId join Mould m on m.Id = p.MouldId " +
            "where p.Stage in ('casting', 'demoulded') or (p.Stage = 'drawn' and c.Stands in ('agreed', 'making', 'quoted')) order by p.Stage, p.Id limit 241", r =>
        {
            ids.Add(r.GetInt64(0));
            _ = r.GetString(1) + r.GetString(2) + r.GetString(6) + r.GetString(9) + r.GetString(10) + r.GetString(11);
            _ = r.IsDBNull(3) ? (DateTime?)null : r.GetDateTime(3);
            _ = r.IsDBNull(4) ? null : JsonColumn.Read<FormerSpec>(r.GetString(4));
            _ = JsonColumn.Read<List<PieceTask>>(r.GetString(5));
            _ = JsonColumn.Read<Dictionary<string, double>>(r.GetString(7));
            count += (int)r.GetInt64(13) + (int)r.GetInt64(14) + 1;
        });
        var list = string.Join(',', ids);
        Each(db, $"select PieceId, \"Order\", Name, Colour, ToMm, ThicknessMm from PieceLayer where PieceId in ({list}) order by PieceId, \"Order\"", r =>
        {
            _ = r.GetString(2) + r.GetString(3);
            _ = r.IsDBNull(4) ? (double?)null : r.GetDouble(4);
            count++;
        });
        var first = DateTime.MaxValue;
        Each(db, $"select Id, PieceId, LayerOrder, LayerName, Colour, FromMm, ToMm, StartedAt, Sheet from Pour where PieceId in ({list}) and not Withdrawn", r =>
        {
            _ = r.GetString(3) + r.GetString(4);
            var at = r.GetDateTime(7);
            first = at < first ? at : first;
            _ = JsonColumn.Read<CureSheet>(r.GetString(8));
            count++;
        });
        Each(db, $"select At, Celsius from Reading where not Withdrawn and At >= coalesce((select max(At) from Reading where not Withdrawn and At <= '{first:yyyy-MM-dd HH:mm:ss}'), '{first:yyyy-MM-dd HH:mm:ss}') order by At, Id", r =>
        {
            _ = r.GetDateTime(0);
            _ = r.GetDouble(1);
            count++;
        });
        return count;
    }

    private static void Each(SqliteConnection db, string sql, Action<SqliteDataReader> row)
    {
        using var command = db.CreateCommand();
        command.CommandText = sql;
        using var reader = command.ExecuteReader();
        while (reader.Read())
        {
            row(reader);
        }
    }
}

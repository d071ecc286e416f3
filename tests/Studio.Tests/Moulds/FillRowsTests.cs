using Studio.Engine.Moulds;
using Studio.Moulds;

namespace Studio.Tests.Moulds;

public sealed class FillRowsTests
{
    [Fact]
    public void Water_added_without_reading_a_height_counts_towards_the_next_reading()
    {
        var fill = Fill((10, 50), (null, 40), (30, 60));
        fill.Added = true;
        fill.Readings.ShouldBe([new FillReading(10, 50), new FillReading(30, 150)]);
        fill.Complaints().ShouldBeEmpty();
    }

    [Fact]
    public void Counting_the_other_way_and_back_loses_nothing()
    {
        var fill = Fill((10, 50), (20, 110.5), (30, 180.2));
        fill.Count(added: true);
        fill.Rows.Select(r => r.Water).ShouldBe([50, 60.5, 69.7]);
        fill.Count(added: false);
        fill.Rows.Select(r => r.Water).ShouldBe([50, 110.5, 180.2]);
    }

    [Fact]
    public void Half_a_row_says_what_is_missing_and_an_empty_one_says_nothing()
    {
        var fill = Fill((10, 50), (20, null), (null, 70), (null, null));
        fill.Complaints().Select(c => (c.Row, c.Field)).ShouldBe([(1, "water"), (2, "height")]);
        Wrong(fill).ShouldBe(["readings[1].water", "readings[2].height"]);
    }

    [Fact]
    public void Readings_out_of_order_are_refused_at_their_rows() =>
        Wrong(Fill((10, 50), (null, null), (8, 70), (30, 60))).ShouldBe(["readings[2].height", "readings[3].water"]);

    [Fact]
    public void A_measured_mould_needs_a_reading() => Wrong(new FillRows()).ShouldBe(["readings"]);

    private static string[] Wrong(FillRows fill) =>
        [.. new MouldValidator().Validate(new MouldForm { Name = "Vase", Shape = "measured", Fill = fill }).Errors.Select(e => e.PropertyName)];

    private static FillRows Fill(params (double? Height, double? Water)[] rows) => new() { Rows = [.. rows.Select(r => new FillRow { HeightMm = r.Height, Water = r.Water })] };
}

using System.Runtime.InteropServices;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Simplify;

namespace Studio.Engine.Film;

/// <summary>Where one print lies: a point (x, y) of its outline is turned a quarter as often as said, (x, y) to (−y, x), and then moved.</summary>
/// <param name="Print">Its place in the list that was to be laid.</param>
/// <param name="Page">Which page, from 0.</param>
/// <param name="QuarterTurns">0 to 3.</param>
/// <param name="MoveXMm">Moved along x after the turn [mm].</param>
/// <param name="MoveYMm">Moved along y after the turn [mm].</param>
[StructLayout(LayoutKind.Auto)]
public readonly record struct NestPlace(int Print, int Page, int QuarterTurns, double MoveXMm, double MoveYMm)
{
    /// <summary>A point of the outline on the page.</summary>
    public FilmPoint On(FilmPoint p)
    {
        var (x, y) = QuarterTurns switch { 0 => (p.UMm, p.VMm), 1 => (-p.VMm, p.UMm), 2 => (-p.UMm, -p.VMm), _ => (p.VMm, -p.UMm) };
        return new(x + MoveXMm, y + MoveYMm);
    }
}

/// <summary>Prints laid out on pages.</summary>
/// <param name="Places">Where each print lies that fits.</param>
/// <param name="TooLarge">Prints that fit no page however they are turned.</param>
/// <param name="Pages">How many pages it takes.</param>
/// <param name="UsedPercent">Share of the pages' room that the prints take [%].</param>
public sealed record NestPlan(IReadOnlyList<NestPlace> Places, IReadOnlyList<int> TooLarge, int Pages, double UsedPercent);

/// <summary>
/// Lays prints close together on pages to save film: the largest first, each as near to the page's beginning as it goes in any of four
/// turns. Not the best that can be done, but never two that touch.
/// </summary>
public static class Nest
{
    private const double StepMm = 2.5;
    private const double FineMm = 0.25;
    private const double SimplerMm = 0.25;
    private const double RoundingMm = 1e-9;
    private const double Alike = 0.01;

    // the nearest place for one is not always the best for all: upright alone, across alone and everything together are tried
    private static readonly int[][] Sets = [[0, 2], [1, 3], [0, 1, 2, 3]];

    /// <summary>Lays prints out.</summary>
    /// <param name="prints">The outline of each print [mm].</param>
    /// <param name="widthMm">Room on a page along x [mm].</param>
    /// <param name="heightMm">Room along y [mm].</param>
    /// <param name="gapMm">Kept free between two prints [mm].</param>
    public static NestPlan Lay(IReadOnlyList<IReadOnlyList<FilmArea>> prints, double widthMm, double heightMm, double gapMm)
    {
        Require.Positive(widthMm, "mm");
        Require.Positive(heightMm, "mm");
        Require.Within(gapMm, 0, 100, "mm");
        return Sets.Select(quarters => Lay(prints, widthMm, heightMm, gapMm, quarters)).OrderBy(p => p.Plan.TooLarge.Count).ThenBy(p => p.Plan.Pages).ThenBy(p => p.ReachMm).First().Plan;
    }

    private static (NestPlan Plan, double ReachMm) Lay(IReadOnlyList<IReadOnlyList<FilmArea>> prints, double widthMm, double heightMm, double gapMm, int[] quarters)
    {
        var reach = 0.0;
        var pages = new List<Page>();
        var places = new List<NestPlace>();
        var tooLarge = new List<int>();
        var shapes = new Dictionary<IReadOnlyList<FilmArea>, List<Turn>>(ReferenceEqualityComparer.Instance);
        foreach (var print in Enumerable.Range(0, prints.Count).OrderByDescending(i => prints[i].Sum(a => a.AreaMm2)))
        {
            if (!shapes.TryGetValue(prints[print], out var turns))
            {
                turns = [.. Different(Turned(prints[print], gapMm, quarters)).Where(t => t.Around.Width <= widthMm + gapMm && t.Around.Height <= heightMm + gapMm)];
                shapes[prints[print]] = turns;
            }

            if (turns.Count == 0)
            {
                tooLarge.Add(print);
                continue;
            }

            var (page, spot) = Find(pages, turns, widthMm + gapMm, heightMm + gapMm);
            reach = page == pages.Count - 1 ? Math.Max(reach, spot.Reach) : page == pages.Count ? spot.Reach : reach;
            if (page == pages.Count)
            {
                pages.Add(new Page());
            }

            var (dx, dy) = (spot.X - spot.Turn.Around.MinX, spot.Y - spot.Turn.Around.MinY);
            pages[page].Laid.Add(PreparedGeometryFactory.Prepare(Moved(spot.Turn.Shape, dx, dy)));
            places.Add(new(print, page, spot.Turn.Quarter, dx - (gapMm / 2), dy - (gapMm / 2)));
        }

        var used = places.Sum(p => prints[p.Print].Sum(a => a.AreaMm2));
        return (new(places, tooLarge, pages.Count, pages.Count == 0 ? 0 : 100 * used / (pages.Count * widthMm * heightMm)), reach);
    }

    private sealed record Turn(int Quarter, Geometry Shape, Envelope Around);

    private sealed record Spot(Turn Turn, double X, double Y)
    {
        public double Reach => Y + Turn.Around.Height;
    }

    /// <summary>What lies on a page, and for each shape and turn the place before which there was no room: there never will be again.</summary>
    private sealed class Page
    {
        public List<IPreparedGeometry> Laid { get; } = [];

        public Dictionary<Turn, (int Row, int Column)> Begin { get; } = new(ReferenceEqualityComparer.Instance);
    }

    // half the gap belongs to each; fewer corners make it quick, and are only ever outside
    private static IEnumerable<Turn> Turned(IReadOnlyList<FilmArea> print, double gapMm, int[] quarters)
    {
        var shape = Areas.Inset(Areas.Of(print), -gapMm / 2);
        var simple = Areas.Inset(TopologyPreservingSimplifier.Simplify(shape, SimplerMm), shape.NumPoints > 12 ? -SimplerMm : 0);
        foreach (var quarter in quarters)
        {
            var turn = new AffineTransformation().Rotate(quarter * Math.PI / 2);
            yield return new(quarter, turn.Transform(simple), turn.Transform(shape).EnvelopeInternal);
        }
    }

    // a circle or a square looks the same after a turn, and need not be tried again
    private static List<Turn> Different(IEnumerable<Turn> turns)
    {
        var kept = new List<Turn>();
        foreach (var turn in turns)
        {
            var home = Moved(turn.Shape, -turn.Around.MinX, -turn.Around.MinY);
            if (kept.TrueForAll(k => Moved(k.Shape, -k.Around.MinX, -k.Around.MinY).SymmetricDifference(home).Area > Alike * home.Area))
            {
                kept.Add(turn);
            }
        }

        return kept;
    }

    private static (int Page, Spot Spot) Find(List<Page> pages, List<Turn> turns, double width, double height)
    {
        for (var page = 0; page < pages.Count; page++)
        {
            if (turns.Select(t => First(pages[page], t, width, height)).OfType<Spot>().OrderBy(s => s.Reach).ThenBy(s => s.X + s.Turn.Around.Width).FirstOrDefault() is { } spot)
            {
                return (page, spot);
            }
        }

        return (pages.Count, turns.Select(t => new Spot(t, 0, 0)).OrderBy(s => s.Reach).First());
    }

    // row by row from the page's beginning, then drawn close
    private static Spot? First(Page page, Turn turn, double width, double height)
    {
        var rows = (int)(((height - turn.Around.Height) / StepMm) + RoundingMm);
        var columns = (int)(((width - turn.Around.Width) / StepMm) + RoundingMm);
        var (row, column) = page.Begin.GetValueOrDefault(turn);
        for (; row <= rows; row++, column = 0)
        {
            for (; column <= columns; column++)
            {
                if (Free(page.Laid, turn, column * StepMm, row * StepMm))
                {
                    page.Begin[turn] = (row, column);
                    return Close(page.Laid, turn, column * StepMm, row * StepMm);
                }
            }
        }

        page.Begin[turn] = (row, 0);
        return null;
    }

    private static Spot Close(List<IPreparedGeometry> laid, Turn turn, double x, double y)
    {
        while (y >= FineMm && Free(laid, turn, x, y - FineMm))
        {
            y -= FineMm;
        }

        while (x >= FineMm && Free(laid, turn, x - FineMm, y))
        {
            x -= FineMm;
        }

        return new(turn, x, y);
    }

    private static bool Free(List<IPreparedGeometry> laid, Turn turn, double x, double y)
    {
        var (dx, dy) = (x - turn.Around.MinX, y - turn.Around.MinY);
        var around = new Envelope(turn.Around.MinX + dx - SimplerMm, turn.Around.MaxX + dx + SimplerMm, turn.Around.MinY + dy - SimplerMm, turn.Around.MaxY + dy + SimplerMm);
        Geometry? moved = null;
        return laid.TrueForAll(l => !l.Geometry.EnvelopeInternal.Intersects(around) || !l.Intersects(moved ??= Moved(turn.Shape, dx, dy)));
    }

    private static Geometry Moved(Geometry shape, double dx, double dy) => AffineTransformation.TranslationInstance(dx, dy).Transform(shape);
}

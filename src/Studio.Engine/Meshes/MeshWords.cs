namespace Studio.Engine.Meshes;

/// <summary>Sentences about a mesh: what, where, what to do.</summary>
internal static class MeshWords
{
    /// <summary>What is wrong with its edges.</summary>
    public static string Edges(EdgeCheck edges, (int Count, Point3 At) twice)
    {
        var said = new List<string>();
        Say(twice.Count, twice.At, "facet is there more than once", "facets are there more than once", "Delete the copies.");
        Say(edges.Open.Count, edges.Open.At, "edge is open, with a facet on one side only", "edges are open, with a facet on one side only", "Close the gap.");
        Say(edges.Crowded.Count, edges.Crowded.At, "edge has more than two facets", "edges have more than two facets", "Leave one closed skin.");
        Say(edges.SameWay.Count, edges.SameWay.At, "edge has two facets wound against each other", "edges have two facets wound against each other", "Turn facets until all face outwards.");
        return "The mesh does not close up, so it has no volume. " + string.Join(' ', said);

        void Say(int count, Point3 at, string one, string many, string remedy)
        {
            if (count > 0)
            {
                said.Add(FormattableString.Invariant($"{count} {(count == 1 ? one : many)}, {(count == 1 ? "at" : "the first at")} {Place(at)}. {remedy}"));
            }
        }
    }

    /// <summary>A place as it stands for casting.</summary>
    public static string Place(Point3 at) => FormattableString.Invariant($"x {Tidy(at.X):0.###}, y {Tidy(at.Y):0.###}, z {Tidy(at.Z):0.###} mm as it stands");

    // no −0
    private static double Tidy(double value) => Math.Round(value, 3) + 0.0;
}

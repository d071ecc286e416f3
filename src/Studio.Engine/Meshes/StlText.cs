namespace Studio.Engine.Meshes;

/// <summary>ASCII STL: solid, facets of one loop of three vertices each, endsolid; several solids may follow one another. Normals are not believed.</summary>
internal ref struct StlText
{
    private readonly VertexWeld weld;
    private readonly List<int> corners;
    private MeshTokens tokens;
    private int facet;
    private int solids;
    private string? trouble;

    private StlText(ReadOnlySpan<byte> text)
    {
        tokens = new MeshTokens(text);
        // a facet takes some 150 characters and brings half a vertex
        (weld, corners) = (new VertexWeld(text.Length / 400), new List<int>(text.Length / 80));
    }

    /// <summary>Reads it.</summary>
    public static Soup Read(ReadOnlySpan<byte> text)
    {
        var reader = new StlText(text);
        while (reader.trouble is null && reader.tokens.Next())
        {
            reader.Solid();
        }

        return reader switch
        {
            { trouble: { } why } => new Soup(null, why),
            { facet: 0 } => Soup.Refused($"The solid is empty: there is no facet in {reader.tokens.Line} lines. Save the mould's cavity as one closed body."),
            _ => new Soup(new TriangleMesh(reader.weld.Coordinates(), [.. reader.corners]), null, reader.solids),
        };
    }

    private void Solid()
    {
        if (!tokens.Is("solid"u8))
        {
            Expected("solid");
            return;
        }

        solids++;
        tokens.RestOfLine();
        while (trouble is null && (tokens.Next() || Ended("endsolid")))
        {
            if (tokens.Is("endsolid"u8))
            {
                tokens.RestOfLine();
                return;
            }

            Facet();
        }
    }

    private void Facet()
    {
        facet++;
        if (!tokens.Is("facet"u8))
        {
            Expected(corners.Count == 0 ? "facet" : "facet or endsolid");
            return;
        }

        // the normal follows from the corners, and some programs write nan here
        for (var words = 0; words < 5 && !tokens.Is("outer"u8) && (tokens.Next() || Ended("outer loop")); words++)
        {
        }

        Word("outer"u8, "outer loop", next: false);
        Word("loop"u8, "outer loop");
        for (var k = 0; k < 3 && trouble is null; k++)
        {
            Vertex();
        }

        if (trouble is null && (tokens.Next() || Ended("endloop")) && tokens.Is("vertex"u8))
        {
            Refuse($"facet {facet} has more than three corners. Save the mesh as triangles.");
        }

        Word("endloop"u8, "endloop", next: false);
        Word("endfacet"u8, "endfacet");
    }

    private void Vertex()
    {
        Word("vertex"u8, "vertex");
        if (Coordinate(out var x) && Coordinate(out var y) && Coordinate(out var z))
        {
            corners.Add(weld.Add(x, y, z));
        }
    }

    private bool Coordinate(out double value)
    {
        value = 0;
        if (trouble is null && (tokens.Next() || Ended("a coordinate")) && !tokens.Number(out value))
        {
            Refuse($"'{tokens.Shown}' in facet {facet} is no number that can be used as a coordinate. Mend the mesh and save it again.");
        }

        return trouble is null;
    }

    private void Word(ReadOnlySpan<byte> word, string name, bool next = true)
    {
        if (trouble is null && (!next || tokens.Next() || Ended(name)) && !tokens.Is(word))
        {
            Expected(name);
        }
    }

    private bool Ended(string name)
    {
        trouble ??= FormattableString.Invariant($"Read as an ASCII STL, the file ends in line {tokens.Line}, facet {facet}, where '{name}' should stand: it was cut short. Save or copy it again.");
        return false;
    }

    private void Expected(string name) => Refuse($"'{name}' should stand where '{tokens.Shown}' stands{(facet > 0 ? FormattableString.Invariant($", facet {facet}") : "")}. Save it again as STL.");

    private void Refuse(FormattableString why) => trouble ??= FormattableString.Invariant($"Read as an ASCII STL, line {tokens.Line}: ") + FormattableString.Invariant(why);
}

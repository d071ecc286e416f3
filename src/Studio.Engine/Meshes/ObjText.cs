using System.Globalization;

namespace Studio.Engine.Meshes;

/// <summary>OBJ: vertices (v) and faces (f, also 1/2/3, 1//3 and counted from the end); faces of more than three corners are cut into a fan. All else is left aside.</summary>
internal ref struct ObjText
{
    private const int MostCorners = 10_000;

    private readonly VertexWeld weld;
    private readonly List<int> numbers;
    private readonly List<int> corners;
    private readonly List<int> face = [];
    private MeshTokens tokens;
    private int facets;
    private (int Number, int Line) furthest;
    private string? trouble;

    private ObjText(ReadOnlySpan<byte> text)
    {
        tokens = new MeshTokens(text);
        (weld, numbers, corners) = (new VertexWeld(text.Length / 100), new List<int>(text.Length / 100), new List<int>(text.Length / 30));
    }

    /// <summary>Reads it.</summary>
    public static Soup Read(ReadOnlySpan<byte> text)
    {
        var reader = new ObjText(text);
        while (reader.trouble is null && reader.tokens.Next())
        {
            reader.Line();
        }

        if (reader.trouble is null && reader.furthest.Number > reader.numbers.Count)
        {
            return Soup.Refused($"Read as OBJ, line {reader.furthest.Line}: vertex {reader.furthest.Number} is used, but there are only {reader.numbers.Count}. Save the file again.");
        }

        return reader switch
        {
            { trouble: { } why } => new Soup(null, why),
            { facets: 0 } => Soup.Refused($"Read as OBJ, the file has no face in {reader.tokens.Line} lines. Save the mould's cavity as one closed body."),
            _ => new Soup(reader.Mesh(), null),
        };
    }

    private void Line()
    {
        if (tokens.Is("v"u8))
        {
            Vertex();
        }
        else if (tokens.Is("f"u8))
        {
            Face();
        }

        while (tokens.NextInLine())
        {
        }
    }

    private void Vertex()
    {
        if (Coordinate(out var x) && Coordinate(out var y) && Coordinate(out var z))
        {
            numbers.Add(weld.Add(x, y, z));
        }
    }

    private bool Coordinate(out double value)
    {
        value = 0;
        if (trouble is null && !(tokens.NextInLine() && tokens.Number(out value)))
        {
            Refuse($"vertex {numbers.Count + 1} has {(tokens.Word.IsEmpty ? "too few coordinates" : $"the coordinate '{tokens.Shown}', which is no number that can be used")}. Mend the mesh and save it again.");
        }

        return trouble is null;
    }

    private void Face()
    {
        face.Clear();
        facets++;
        while (trouble is null && tokens.NextInLine() && !tokens.Word.StartsWith("#"u8))
        {
            // a backslash carries the face over to the next line
            if (tokens.Is("\\"u8) && !tokens.Next())
            {
                break;
            }

            Corner();
        }

        if (trouble is null && face.Count is < 3 or > MostCorners)
        {
            Refuse($"face {facets} has {face.Count} corners; it needs 3 or more{(face.Count > MostCorners ? FormattableString.Invariant($" and at most {MostCorners}") : "")}. Mend the mesh and save it again.");
        }

        for (var k = 2; k < face.Count && trouble is null; k++)
        {
            corners.AddRange([face[0], face[k - 1], face[k]]);
        }
    }

    private void Corner()
    {
        var slash = tokens.Word.IndexOf((byte)'/');
        var word = slash < 0 ? tokens.Word : tokens.Word[..slash];
        if (!int.TryParse(word, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) || number == 0 || -(long)number > numbers.Count)
        {
            Refuse($"face {facets} names the vertex '{tokens.Shown}', and there is none. Mend the mesh and save it again.");
            return;
        }

        number = number < 0 ? numbers.Count + number : number - 1;
        furthest = number >= furthest.Number ? (number + 1, tokens.Line) : furthest;
        face.Add(number);
    }

    private void Refuse(FormattableString why) => trouble ??= FormattableString.Invariant($"Read as OBJ, line {tokens.Line}: ") + FormattableString.Invariant(why);

    // faces may come before their vertices, so only now is each vertex known; those no face uses are left out
    private readonly TriangleMesh Mesh()
    {
        var welded = new int[corners.Count];
        for (var i = 0; i < welded.Length; i++)
        {
            welded[i] = numbers[corners[i]];
        }

        return Compact.Used(weld.Coordinates(), welded);
    }
}

using System.Buffers.Binary;
using System.Globalization;
using System.IO.Compression;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace Studio.Papers;

/// <summary>
/// Mends two faults of PDFsharp 6.2.4's writer by rewriting the finished file: its Flate streams end without the
/// Adler-32 that RFC 1950 asks for, and its XMP packet neither escapes the title nor names PDF/UA.
/// </summary>
public static partial class PdfFinisher
{
    public static byte[] Finish(byte[] pdf, string title, string creator)
    {
        var l1 = Encoding.Latin1;
        var text = l1.GetString(pdf);
        var xref = int.Parse(text[(text.LastIndexOf("startxref", StringComparison.Ordinal) + 9)..text.LastIndexOf("%%EOF", StringComparison.Ordinal)], CultureInfo.InvariantCulture);
        var trailerAt = text.IndexOf("trailer", xref, StringComparison.Ordinal);
        var trailer = text[trailerAt..text.IndexOf("startxref", trailerAt, StringComparison.Ordinal)];
        var offsets = XrefEntry().Matches(text[xref..trailerAt]).Select((m, i) => (Num: i, Offset: int.Parse(m.Groups[1].ValueSpan, CultureInfo.InvariantCulture), InUse: m.Groups[2].Value is "n")).ToList();
        var inUse = offsets.Where(o => o.InUse).OrderBy(o => o.Offset).ToList();

        using var ms = new MemoryStream();
        ms.Write(pdf.AsSpan(0, inUse[0].Offset));
        var moved = new Dictionary<int, long>();
        for (var i = 0; i < inUse.Count; i++)
        {
            var end = i + 1 < inUse.Count ? inUse[i + 1].Offset : xref;
            moved[inUse[i].Num] = ms.Position;
            ms.Write(Object(pdf[inUse[i].Offset..end], title, creator));
        }

        var at = ms.Position;
        var sb = new StringBuilder().Append(CultureInfo.InvariantCulture, $"xref\n0 {offsets.Count}\n");
        foreach (var o in offsets)
        {
            sb.Append(o.InUse ? $"{moved[o.Num]:D10} 00000 n \n" : "0000000000 65535 f \n");
        }

        sb.Append(trailer).Append(CultureInfo.InvariantCulture, $"startxref\n{at}\n%%EOF\n");
        ms.Write(l1.GetBytes(sb.ToString()));
        return ms.ToArray();
    }

    private static byte[] Object(byte[] chunk, string title, string creator)
    {
        var text = Encoding.Latin1.GetString(chunk);
        var m = StreamStart().Match(text);
        if (!m.Success)
        {
            return chunk;
        }

        var lengthMatch = LengthKey().Match(m.Value);
        var data = chunk.AsSpan(m.Length, int.Parse(lengthMatch.Groups[1].ValueSpan, CultureInfo.InvariantCulture)).ToArray();
        byte[] now;
        if (m.Value.Contains("/Type/Metadata", StringComparison.Ordinal))
        {
            now = Xmp(title, creator);
        }
        else if (FlateOnly().IsMatch(m.Value))
        {
            now = new byte[data.Length + 4];
            data.CopyTo(now, 0);
            BinaryPrimitives.WriteUInt32BigEndian(now.AsSpan(data.Length), Adler(data));
        }
        else
        {
            return chunk;
        }

        var head = LengthKey().Replace(m.Value, $"/Length {now.Length}", 1);
        return [.. Encoding.Latin1.GetBytes(head), .. now, .. chunk.AsSpan(m.Length + data.Length)];
    }

    private static uint Adler(byte[] zlib)
    {
        using var src = new MemoryStream(zlib, 2, zlib.Length - 2);
        using var inflate = new DeflateStream(src, CompressionMode.Decompress);
        uint a = 1, b = 0;
        for (int x; (x = inflate.ReadByte()) >= 0;)
        {
            a = (a + (uint)x) % 65521;
            b = (b + a) % 65521;
        }

        return (b << 16) | a;
    }

    private static byte[] Xmp(string title, string creator)
    {
        XNamespace x = "adobe:ns:meta/", rdf = "http://www.w3.org/1999/02/22-rdf-syntax-ns#", dc = "http://purl.org/dc/elements/1.1/", ua = "http://www.aiim.org/pdfua/ns/id/";
        XElement Alt(string s) => new(rdf + "Alt", new XElement(rdf + "li", new XAttribute(XNamespace.Xml + "lang", "x-default"), s));
        var doc = new XElement(x + "xmpmeta", new XAttribute(XNamespace.Xmlns + "x", x),
            new XElement(rdf + "RDF", new XAttribute(XNamespace.Xmlns + "rdf", rdf),
                new XElement(rdf + "Description", new XAttribute(rdf + "about", ""), new XAttribute(XNamespace.Xmlns + "dc", dc), new XAttribute(XNamespace.Xmlns + "pdfuaid", ua),
                    new XElement(ua + "part", 1), new XElement(dc + "title", Alt(title)), new XElement(dc + "creator", new XElement(rdf + "Seq", new XElement(rdf + "li", creator))))));
        return Encoding.UTF8.GetBytes($"<?xpacket begin=\"\uFEFF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n{doc}\n<?xpacket end=\"w\"?>");
    }

    [GeneratedRegex(@"(?<o>\d{10}) \d{5} (?<t>[nf])", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex XrefEntry();

    [GeneratedRegex(@"\A\d+ \d+ obj\s*<<.*?>>\s*stream\r?\n", RegexOptions.Singleline, 1000)]
    private static partial Regex StreamStart();

    [GeneratedRegex(@"/Length (?<n>\d+)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex LengthKey();

    [GeneratedRegex(@"/Filter\s*/FlateDecode\b", RegexOptions.None, 1000)]
    private static partial Regex FlateOnly();
}

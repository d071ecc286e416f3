using UglyToad.PdfPig;
using UglyToad.PdfPig.Tokens;

namespace Studio.Tests.Papers;

/// <summary>A paper's structure tree, read back.</summary>
internal sealed record PaperTree(string Role, string? Alt, string? Scope, IReadOnlyList<PaperTree> Kids)
{
    public IEnumerable<PaperTree> All => Kids.SelectMany(k => k.All).Prepend(this);

    public static PaperTree Of(PdfDocument pdf)
    {
        var root = Follow<DictionaryToken>(pdf, pdf.Structure.Catalog.CatalogDictionary.Data["StructTreeRoot"]);
        return Read(pdf, Follow<DictionaryToken>(pdf, root.Data["K"]));
    }

    public static T Follow<T>(PdfDocument pdf, IToken token)
        where T : class, IToken => token is IndirectReferenceToken reference ? Follow<T>(pdf, pdf.Structure.GetObject(reference.Data).Data) : token.ShouldBeAssignableTo<T>()!;

    private static PaperTree Read(PdfDocument pdf, DictionaryToken element)
    {
        var kids = new List<PaperTree>();
        if (element.Data.TryGetValue("K", out var k))
        {
            foreach (var kid in Follow<IToken>(pdf, k) is ArrayToken several ? several.Data : [k])
            {
                if (Follow<IToken>(pdf, kid) is DictionaryToken below && below.Data.ContainsKey("S"))
                {
                    kids.Add(Read(pdf, below));
                }
            }
        }

        var scope = element.Data.TryGetValue("A", out var a) ? Scoped(pdf, a) : null;
        var alt = element.Data.TryGetValue("Alt", out var words) ? words switch
        {
            StringToken s => s.Data,
            HexToken h => h.Data,
            _ => null,
        } : null;
        return new PaperTree(((NameToken)element.Data["S"]).Data, alt, scope, kids);
    }

    private static string? Scoped(PdfDocument pdf, IToken token) =>
        token is DictionaryToken or IndirectReferenceToken && Follow<IToken>(pdf, token) is DictionaryToken attributes && attributes.Data.TryGetValue("Scope", out var scope)
            ? ((NameToken)scope).Data
            : null;
}

using System.Globalization;
using FluentValidation;
using Studio.Engine.Custody;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>A keepsake as it is taken in at the kitchen table, or corrected later.</summary>
public sealed class IntakeForm
{
    public string Kind { get; set; } = "";

    public string Description { get; set; } = "";

    public double? Count { get; set; } = 1;

    public double? MassG { get; set; }

    /// <summary>One of <see cref="ConditionWords.Overall"/>; empty when not rated.</summary>
    public string Overall { get; set; } = "";

    public List<string> Damage { get; set; } = [];

    public string ConditionNote { get; set; } = "";

    /// <summary>What an only photograph that is to be cast is refused with.</summary>
    public const string OnlyCopyWords = "There is only this one photograph, so it is not cast: scan it, cast a print of the scan, and give it back. Choose “Copy it, return the original”. If the family insists in writing, the owner of the studio can overrule this with the reason.";

    /// <summary>Empty until the family has said it: there is no default for another person's word.</summary>
    public string Permits { get; set; } = "";

    /// <summary>Where a part may be cast: at most so many pieces, if the family said.</summary>
    public double? PartCount { get; set; }

    /// <summary>Where a part may be cast: at most so much [g], if the family said.</summary>
    public double? PartG { get; set; }

    /// <summary>Why the owner lets the only photograph be cast all the same; prints on the receipt.</summary>
    public string OverruledWhy { get; set; } = "";

    public string Place { get; set; } = "";

    public string Method { get; set; } = "by hand";

    public string DepositorName { get; set; } = "";

    public string DepositorAuthority { get; set; } = "";

    public string Requirements { get; set; } = "";

    public string Packing { get; set; } = "";

    public string ReturnBy { get; set; } = "";

    /// <summary>Made once for each keepsake, so that a second send adds nothing.</summary>
    public string SubmitKey { get; set; } = NewKey();

    /// <summary>Photographs already received, by their record's id.</summary>
    public List<int> PhotoIds { get; set; } = [];

    /// <summary>The rating and the words of damage together, as they are stored and printed.</summary>
    public List<string> AllConditionWords => Overall.Length > 0 ? [Overall, .. Damage] : Damage;

    /// <summary>True while nothing is filled in that belongs to this keepsake alone.</summary>
    public bool Blank => Kind.Length == 0 && Description.Length == 0 && MassG is null && Overall.Length == 0 && Damage.Count == 0 && ConditionNote.Length == 0 && Requirements.Length == 0;

    public DateOnly? ReturnDay => DateOnly.TryParseExact(ReturnBy, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    /// <summary>What was carried over from the one before, by its name; empty where nothing was. Their word is asked afresh for each thing.</summary>
    public List<string> Carried { get; set; } = [];

    /// <summary>How much of it may be cast, by what is chosen so far.</summary>
    public CastShare MayCast => Permissions.For(Permits).MayCast;

    /// <summary>True where the only photograph there is would be cast.</summary>
    public bool NeedsOverruling => MaterialRules.For(Kind).MayBeOverruled && Permissions.For(Permits).ThingMayBeCast;

    /// <summary>The form for the next one of the same visit: what stays the same for a family's visit stays filled in, and says so. What they permit never does.</summary>
    public IntakeForm Next() => new()
    {
        Place = Place,
        Method = Method,
        DepositorName = DepositorName,
        DepositorAuthority = DepositorAuthority,
        Packing = Packing,
        ReturnBy = ReturnBy,
        Carried = [.. CarriedOver()],
    };

    private IEnumerable<string> CarriedOver()
    {
        (string Name, string Value)[] all =
        [
            (nameof(Place), Place), (nameof(Method), Method), (nameof(DepositorName), DepositorName), (nameof(DepositorAuthority), DepositorAuthority), (nameof(Packing), Packing), (nameof(ReturnBy), ReturnBy),
        ];
        return all.Where(f => f.Value.Length > 0).Select(f => f.Name);
    }

    /// <summary>Takes what stands in the browser's fields, which is the truth when a lost connection swallowed some typing.</summary>
    /// <returns>A complaint for each number that cannot be read, by field.</returns>
    public Dictionary<string, string> Take(IReadOnlyDictionary<string, string[]> typed)
    {
        var wrong = new Dictionary<string, string>(StringComparer.Ordinal);
        string? One(string name) => typed.TryGetValue(name, out var values) ? values.FirstOrDefault() ?? "" : null;
        Kind = One("kind") ?? Kind;
        Description = One("description") ?? Description;
        Overall = One("overall") ?? Overall;
        ConditionNote = One("conditionNote") ?? ConditionNote;
        Permits = One("permits") ?? Permits;
        OverruledWhy = One("overruledWhy") ?? OverruledWhy;
        Carried = typed.ContainsKey("description") ? [.. typed.GetValueOrDefault("carried", [])] : Carried;
        Place = One("place") ?? Place;
        Method = One("method") ?? Method;
        DepositorName = One("depositorName") ?? DepositorName;
        DepositorAuthority = One("depositorAuthority") ?? DepositorAuthority;
        Requirements = One("requirements") ?? Requirements;
        Packing = One("packing") ?? Packing;
        ReturnBy = One("returnBy") ?? ReturnBy;
        SubmitKey = One("submitKey") is { Length: > 0 } key ? key : SubmitKey;
        Damage = typed.ContainsKey("description") ? [.. typed.GetValueOrDefault("damage", [])] : Damage;
        Count = Number("count", "", Count);
        MassG = Number("massG", "g", MassG);
        PartCount = Number("partCount", "", PartCount);
        PartG = Number("partG", "g", PartG);
        return wrong;

        double? Number(string name, string unit, double? before)
        {
            if (One(name) is not { } text)
            {
                return before;
            }

            var (value, complaint) = Quantity.Read(text, unit);
            if (complaint is not null)
            {
                wrong[name] = complaint;
                return before; // so that the field does not give way to an empty one, and is refused again
            }

            return value;
        }
    }

    /// <summary>A stored keepsake as a form, for correcting.</summary>
    public static IntakeForm Of(Keepsake k) => new()
    {
        Kind = k.Kind,
        Description = k.Description,
        Count = k.Count,
        MassG = k.MassG,
        Overall = k.ConditionWords.Find(w => ConditionWords.Overall.Contains(w, StringComparer.Ordinal)) ?? "",
        Damage = [.. k.ConditionWords.Where(w => !ConditionWords.Overall.Contains(w, StringComparer.Ordinal))],
        ConditionNote = k.ConditionNote,
        Permits = k.Permits,
        PartCount = k.PartCount,
        PartG = k.PartG,
        OverruledWhy = k.OverruledWhy,
        Place = k.Place,
        Method = k.Method,
        DepositorName = k.DepositorName,
        DepositorAuthority = k.DepositorAuthority,
        Requirements = k.Requirements,
        Packing = k.Packing,
        ReturnBy = k.ReturnBy?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "",
        SubmitKey = k.SubmitKey,
    };

    private static string NewKey() => Guid.NewGuid().ToString("n");
}

/// <summary>Everything that is missing or cannot be, at once.</summary>
public sealed class IntakeValidator : AbstractValidator<IntakeForm>
{
    private const double MostG = 50_000;

    public IntakeValidator()
    {
        RuleFor(f => f.Kind).NotEmpty().WithMessage("Choose what it is made of.");
        RuleFor(f => f.Description).NotEmpty().WithMessage("Say in a few words what it is, such as “heather, tied with blue thread”.");
        RuleFor(f => f.Description).MaximumLength(300).WithMessage("Keep it to 300 characters; the rest belongs to the condition or the wishes.");
        RuleFor(f => f.Count).NotNull().WithMessage("Say how many there are.");
        RuleFor(f => f.Count).Must(c => c is null || (c is >= 1 and <= 9999 && c.Value == Math.Floor(c.Value))).WithMessage("Count whole things, from 1 to 9999.");
        RuleFor(f => f.MassG).InclusiveBetween(0.001, MostG).When(f => f.MassG is not null).WithMessage("A keepsake weighs more than nothing and at most 50 kg. Look at the scale again, or leave this empty.");
        RuleFor(f => f.ConditionNote).NotEmpty().When(f => f.Overall is "Fair" or "Poor" && f.Damage.Count == 0).WithMessage(f => $"Mark the damage, or say in a few words why it is {f.Overall.ToLowerInvariant()}.");
        RuleFor(f => f.ConditionNote).MaximumLength(1000).WithMessage("At most 1000 characters.");
        RuleFor(f => f.Permits).Must(p => Permissions.For(p).Known).WithMessage("Ask the family what may be done with it, and choose their answer.");
        RuleFor(f => f.Permits).Must((f, _) => f.OverruledWhy.Trim().Length >= 10).When(f => f.NeedsOverruling).WithMessage(IntakeForm.OnlyCopyWords);
        RuleFor(f => f.OverruledWhy).MaximumLength(500).WithMessage("At most 500 characters.");
        RuleFor(f => f.PartCount).Must(c => c is null || (c >= 1 && c.Value == Math.Floor(c.Value))).When(f => f.MayCast == CastShare.Part).WithMessage("Count whole things, from 1, or leave it empty.");
        RuleFor(f => f.PartCount).Must((f, c) => c is null || c < f.Count).When(f => f is { MayCast: CastShare.Part, Count: not null }).WithMessage(f => $"A part is fewer than the {f.Count:0} there are.");
        RuleFor(f => f.PartG).Must(g => g is null or > 0).When(f => f.MayCast == CastShare.Part).WithMessage("A part weighs more than nothing; or leave it empty.");
        RuleFor(f => f.PartG).Must((f, g) => g is null || g < f.MassG).When(f => f is { MayCast: CastShare.Part, MassG: not null }).WithMessage(f => $"A part is less than the {Say.Grams(f.MassG!.Value)} it weighs.");
        RuleFor(f => f.Place).NotEmpty().WithMessage("Say where it will lie.");
        RuleFor(f => f.Place).MaximumLength(120).WithMessage("A place has at most 120 characters.");
        RuleFor(f => f.ReturnBy).Must((f, day) => day.Length == 0 || f.ReturnDay is not null).WithMessage("Choose the day from the calendar, or leave it empty.");
        RuleFor(f => f.DepositorAuthority).NotEmpty().When(f => f.DepositorName.Length > 0).WithMessage("Say by what right they bring it, such as “daughter, with her mother's word”.");
        RuleFor(f => f.DepositorName).MaximumLength(200).WithMessage("At most 200 characters.");
        RuleFor(f => f.Requirements).MaximumLength(1000).WithMessage("At most 1000 characters.");
        RuleFor(f => f.Packing).MaximumLength(300).WithMessage("At most 300 characters.");
    }
}

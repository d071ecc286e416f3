using FluentValidation;

namespace Studio.Tips;

/// <summary>A tip as it is being typed.</summary>
public sealed class TipForm : Shell.IEdited
{
    private const int TitleLetters = 40;

    public int Id { get; set; }

    public int Version { get; set; }

    public string Place { get; set; } = TipPlaces.Layer;

    public string Text { get; set; } = "";

    public string Source { get; set; } = "Common practice, no source.";

    public string Seed { get; set; } = "";

    public bool Retired { get; set; }

    /// <summary>Its first words; a tip has no other name.</summary>
    public string Name => TitleOf(Text);

    /// <summary>The first words of a tip.</summary>
    public static string TitleOf(string text) => text.Length <= TitleLetters ? text : text[..(text.LastIndexOf(' ', TitleLetters) is > 0 and var space ? space : TitleLetters)] + " …";

    public static TipForm Of(Tip t) => new() { Id = t.Id, Version = t.Version, Place = t.Place, Text = t.Text, Source = t.Source, Seed = t.Seed, Retired = t.Retired };

    /// <summary>The record, from a form that the validator has passed.</summary>
    public Tip ToTip() => new() { Id = Id, Version = Version, Place = Place, Text = Text.Trim(), Source = Source.Trim(), Seed = Seed, Retired = Retired };
}

/// <summary>What a tip needs before it can be kept.</summary>
public sealed class TipValidator : AbstractValidator<TipForm>
{
    public TipValidator()
    {
        RuleFor(t => t.Text).Must(t => !string.IsNullOrWhiteSpace(t)).WithMessage("Write the tip: one or two sentences.").MaximumLength(400).WithMessage("Keep the tip under 400 letters, so that it is read.");
        RuleFor(t => t.Source).Must(s => !string.IsNullOrWhiteSpace(s)).WithMessage("Say where it is from, such as “own experience”.").MaximumLength(200).WithMessage("Keep the source under 200 letters.");
        RuleFor(t => t.Place).Must(p => TipPlaces.All.Any(a => a.Key == p)).WithMessage("Choose the choice it stands beside.");
    }
}

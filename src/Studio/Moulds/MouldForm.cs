using FluentValidation;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>A mould as it is being typed. Dimensions typed for another shape are remembered while the shape is being chosen.</summary>
public sealed class MouldForm : Shell.IEdited
{
    public int Id { get; set; }

    public int Version { get; set; }

    public string Name { get; set; } = "";

    public string Shape { get; set; } = "pyramid";

    /// <summary>Dimension name to number; null where nothing is typed.</summary>
    public Dictionary<string, double?> Dimensions { get; set; } = new(StringComparer.Ordinal);

    public double? Owned { get; set; } = 1;

    public string Notes { get; set; } = "";

    public bool Retired { get; set; }

    /// <summary>The shape's own list of dimensions; empty for a shape that this program does not know.</summary>
    public IReadOnlyList<Dimension> Asked => MouldShapes.Find(Shape)?.Dimensions ?? [];

    /// <summary>What the engine makes a mould from.</summary>
    public MouldSpec Spec => new(Shape, Asked.Where(d => Size(d) is not null).ToDictionary(d => d.Name, d => Size(d)!.Value, StringComparer.Ordinal));

    public static MouldForm Of(Mould m) => new()
    {
        Id = m.Id,
        Version = m.Version,
        Name = m.Name,
        Shape = m.Shape,
        Owned = m.Owned,
        Notes = m.Notes,
        Retired = m.Retired,
        Dimensions = m.Dimensions.ToDictionary(d => d.Key, d => (double?)d.Value, StringComparer.Ordinal),
    };

    /// <summary>The record, from a form that the validator has passed.</summary>
    public Mould ToMould() => new()
    {
        Id = Id,
        Version = Version,
        Name = Name.Trim(),
        Shape = Shape,
        Owned = (int)(Owned ?? 0),
        Notes = Notes.Trim(),
        Retired = Retired,
        Dimensions = new(Spec.Dimensions, StringComparer.Ordinal),
    };

    /// <summary>A dimension as typed, or its default.</summary>
    public double? Size(Dimension dimension) => Dimensions.GetValueOrDefault(dimension.Name) ?? dimension.Default;
}

/// <summary>What a mould needs before it can be kept; the dimensions' limits are the engine's.</summary>
public sealed class MouldValidator : AbstractValidator<MouldForm>
{
    public MouldValidator()
    {
        RuleFor(m => m.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("Give the mould a name, such as “Pyramid 150, tall”.")
            .MaximumLength(100).WithMessage("Keep the name under 100 letters.");
        RuleFor(m => m.Notes).MaximumLength(1000).WithMessage("Keep the notes under 1000 letters.");
        RuleFor(m => m.Owned).Must(o => o is >= 0 and <= 10_000 && Math.Floor(o.Value) == o.Value).WithMessage("How many do you own? A whole number, 0 or more.");
        RuleFor(m => m.Shape).Must(s => MouldShapes.Find(s) is not null).WithMessage("Choose a shape.");
        RuleFor(m => m).Custom((form, context) =>
        {
            foreach (var d in form.Asked)
            {
                if (Complaint(form, d) is { } said)
                {
                    context.AddFailure(d.Name, said);
                }
            }
        });
    }

    private static string? Complaint(MouldForm form, Dimension d) =>
        form.Size(d) is { } size ? d.Complaint(size) : $"{d.Label} is needed.";
}

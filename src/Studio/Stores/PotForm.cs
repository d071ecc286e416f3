using FluentValidation;
using Studio.Engine.Bubbles;

namespace Studio.Stores;

/// <summary>A pressure pot as it is being typed.</summary>
public sealed class PotForm : Shell.IEdited
{
    public int Id { get; set; }

    public int Version { get; set; }

    public string Name { get; set; } = "";

    public double? RatedBar { get; set; }

    public double? WorkingBar { get; set; }

    public DateOnly? TestedOn { get; set; }

    public DateOnly? TestDueOn { get; set; }

    public double? InnerDiameterMm { get; set; }

    public double? InnerHeightMm { get; set; }

    public string Notes { get; set; } = "";

    public bool Retired { get; set; }

    public static PotForm Of(Pot p) => new()
    {
        Id = p.Id,
        Version = p.Version,
        Name = p.Name,
        RatedBar = p.RatedBar,
        WorkingBar = p.WorkingBar,
        TestedOn = p.TestedOn,
        TestDueOn = p.TestDueOn,
        InnerDiameterMm = p.InnerDiameterMm,
        InnerHeightMm = p.InnerHeightMm,
        Notes = p.Notes,
        Retired = p.Retired,
    };

    public Pot ToPot() => new()
    {
        Id = Id,
        Version = Version,
        Name = Name.Trim(),
        RatedBar = RatedBar,
        WorkingBar = WorkingBar,
        TestedOn = TestedOn,
        TestDueOn = TestDueOn,
        InnerDiameterMm = InnerDiameterMm,
        InnerHeightMm = InnerHeightMm,
        Notes = Notes.Trim(),
        Retired = Retired,
    };
}

/// <summary>What a pot needs before it can be kept; whether it may be used is <see cref="PotPlan"/>'s to say.</summary>
public sealed class PotValidator : AbstractValidator<PotForm>
{
    private const double MostBar = 20;

    public PotValidator()
    {
        RuleFor(p => p.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("Give the pot a name that you know it by.").MaximumLength(100).WithMessage("Keep the name under 100 letters.");
        RuleFor(p => p.Notes).MaximumLength(1000).WithMessage("Keep the notes under 1000 letters.");
        RuleFor(p => p.RatedBar).Must(b => b is null or (> 0 and <= MostBar)).WithMessage("A rating lies above 0 and at most at 20 bar. On a plate in psi, type the unit, such as 60 psi.");
        RuleFor(p => p.WorkingBar).Must(b => b is null or (> 0 and <= MostBar)).WithMessage("A pressure lies above 0 and at most at 20 bar.")
            .Must((p, b) => b is null || p.RatedBar is null || b <= p.RatedBar).WithMessage("That is more than the pot is rated for. A pot that bursts kills: stay at or below its plate.");
        RuleFor(p => p.TestDueOn).Must((p, due) => due is null || p.TestedOn is null || due > p.TestedOn).WithMessage("The next test must come after the last one.");
        RuleFor(p => p.InnerDiameterMm).Must(d => d is null or (> 0 and <= 3000)).WithMessage("Must be above 0 and at most 3000 mm.");
        RuleFor(p => p.InnerHeightMm).Must(d => d is null or (> 0 and <= 3000)).WithMessage("Must be above 0 and at most 3000 mm.");
    }
}

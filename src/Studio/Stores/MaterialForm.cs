using FluentValidation;

namespace Studio.Stores;

/// <summary>A material as it is being typed.</summary>
public sealed class MaterialForm : Shell.IEdited
{
    public int Id { get; set; }

    public int Version { get; set; }

    public string Name { get; set; } = "";

    public string Kind { get; set; } = "pigment";

    public string Unit { get; set; } = "g";

    public double? DensityGPerMl { get; set; }

    public string DensitySource { get; set; } = "";

    public double? PackingFraction { get; set; }

    public double? LimitC { get; set; }

    /// <summary>For lights and batteries: whether it is or holds a button cell; null while nobody has said.</summary>
    public bool? ButtonCell { get; set; }

    public double? PackSize { get; set; }

    public double? PackPrice { get; set; }

    public bool Retired { get; set; }

    public static MaterialForm Of(Material m) => new()
    {
        Id = m.Id,
        Version = m.Version,
        Name = m.Name,
        Kind = m.Kind,
        Unit = m.Unit,
        DensityGPerMl = m.DensityGPerMl,
        DensitySource = m.DensitySource,
        PackingFraction = m.PackingFraction,
        LimitC = m.LimitC,
        ButtonCell = m.ButtonCell,
        PackSize = m.PackSize,
        PackPrice = (double)m.PackPrice,
        Retired = m.Retired,
    };

    /// <summary>The record, from a form that the validator has passed.</summary>
    public Material ToMaterial() => new()
    {
        Id = Id,
        Version = Version,
        Name = Name.Trim(),
        Kind = Kind,
        Unit = Unit,
        DensityGPerMl = DensityGPerMl,
        DensitySource = DensitySource.Trim(),
        PackingFraction = PackingFraction,
        LimitC = LimitC,
        ButtonCell = ButtonCell,
        PackSize = PackSize ?? 1,
        PackPrice = (decimal)(PackPrice ?? 0),
        Retired = Retired,
    };
}

/// <summary>What a material needs before it can be kept.</summary>
public sealed class MaterialValidator : AbstractValidator<MaterialForm>
{
    private const double DensestGPerMl = Engine.Resins.MixedResin.DensestGPerMl;

    public MaterialValidator()
    {
        RuleFor(m => m.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("Give it the name that stands on its jar.")
            .MaximumLength(100).WithMessage("Keep the name under 100 letters.");
        RuleFor(m => m.Kind).NotEmpty().WithMessage("Choose what kind of thing it is.");
        RuleFor(m => m.Unit).Must(u => MaterialKinds.Units.Any(k => k.Key == u)).WithMessage("Choose what it is counted in.");
        RuleFor(m => m.DensityGPerMl).Must(d => d is null or (> 0 and <= DensestGPerMl)).WithMessage("Must be above 0 and at most 30 g/ml. Densities in kg/m³ are read too: type the unit.");
        RuleFor(m => m.DensitySource).Must((m, s) => m.DensityGPerMl is null || !string.IsNullOrWhiteSpace(s)).WithMessage("Say where the density is from: a data sheet, a handbook, or “weighed by me”.")
            .MaximumLength(300).WithMessage("Keep the source under 300 letters.");
        RuleFor(m => m.PackingFraction).Must(p => p is null or (> 0 and <= 1)).WithMessage("Must be above 0 and at most 1; poured beads are about 0.6. For 60 % type 0.6.");
        RuleFor(m => m.LimitC).Must(c => c is null or (>= 20 and <= 500)).WithMessage("Must be between 20 and 500 °C.");
        RuleFor(m => m.PackSize).NotNull().WithMessage("How much is in a pack?").Must(s => s is null or (> 0 and <= 1e7)).WithMessage("A pack holds more than nothing.");
        RuleFor(m => m.PackPrice).NotNull().WithMessage("What does a pack cost? Type 0 for what costs nothing.").Must(p => p is null or (>= 0 and <= 1e6)).WithMessage("A price is nothing or more, and at most 1000000.");
    }
}

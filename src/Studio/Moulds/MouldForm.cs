using System.Text.Json.Serialization;
using FluentValidation;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>A mould as it is being typed. What was typed for another shape is remembered while the shape is being chosen.</summary>
public sealed class MouldForm : Shell.IEdited
{
    public int Id { get; set; }

    public int Version { get; set; }

    public string Name { get; set; } = "";

    public string Shape { get; set; } = MouldShapes.Usual;

    /// <summary>Dimension name to number; null where nothing is typed.</summary>
    public Dictionary<string, double?> Dimensions { get; set; } = new(StringComparer.Ordinal);

    /// <summary>For a mould measured with water.</summary>
    public FillRows Fill { get; set; } = new();

    /// <summary>For a mould from a mesh; its unit is empty until somebody says it.</summary>
    public MouldMesh? Mesh { get; set; }

    /// <summary>Kept water checks; changed by the book, never by a save of the form.</summary>
    public List<WaterCheck> Checks { get; set; } = [];

    public double VolumeFactor { get; set; } = 1;

    public double? VolumeSpreadPercent { get; set; }

    /// <summary>The measures that are kept, to tell whether they were changed since.</summary>
    public string KeptMeasures { get; set; } = "";

    /// <summary>Key of its wall's material; empty where nobody said.</summary>
    public string WallMaterial { get; set; } = "";

    public double? WallMm { get; set; }

    public double? FloorMm { get; set; }

    public double? WallLimitC { get; set; }

    public double? Owned { get; set; } = 1;

    public string Notes { get; set; } = "";

    public bool Retired { get; set; }

    /// <summary>The shape's own list of dimensions; empty for a shape that this program does not know.</summary>
    [JsonIgnore]
    public IReadOnlyList<Dimension> Asked => MouldShapes.Find(Shape)?.Dimensions ?? [];

    /// <summary>What the shape says beside its measures; empty for nothing.</summary>
    [JsonIgnore]
    public string Note => MouldShapes.Find(Shape)?.Note ?? "";

    [JsonIgnore]
    public MouldNeeds Needs => MouldShapes.Find(Shape)?.Needs ?? MouldNeeds.Nothing;

    /// <summary>What the engine makes a mould from, as its measures say; a mesh's cavity is added by the book.</summary>
    [JsonIgnore]
    public MouldSpec Spec => new(Shape, Asked.Where(d => Size(d) is not null).ToDictionary(d => d.Name, d => Size(d)!.Value, StringComparer.Ordinal))
    {
        Readings = Needs is MouldNeeds.Readings ? Fill.Readings : null,
        Mesh = Needs is MouldNeeds.Mesh ? Mesh?.Source : null,
    };

    /// <summary>The measures as one text.</summary>
    [JsonIgnore]
    public string Measures => JsonColumn.Write(new { Spec.Shape, Sizes = Spec.Dimensions.OrderBy(d => d.Key, StringComparer.Ordinal), Spec.Readings, Mesh = Needs is MouldNeeds.Mesh ? Mesh : null });

    /// <summary>True when it is kept, and its measures are not what is kept.</summary>
    [JsonIgnore]
    public bool Remeasured => Id > 0 && Measures != KeptMeasures;

    public static MouldForm Of(Mould m)
    {
        var form = new MouldForm
        {
            Id = m.Id,
            Version = m.Version,
            Name = m.Name,
            Shape = m.Shape,
            Owned = m.Owned,
            Notes = m.Notes,
            Retired = m.Retired,
            Dimensions = m.Dimensions.ToDictionary(d => d.Key, d => (double?)d.Value, StringComparer.Ordinal),
            Fill = FillRows.Of(m.Readings),
            Mesh = m.Mesh,
            WallMaterial = m.Wall?.Material ?? "",
            WallMm = m.Wall?.ThicknessMm,
            FloorMm = m.Wall?.FloorMm,
            WallLimitC = m.Wall?.LimitC,
        };
        form.KeptMeasures = form.Measures;
        form.TakeChecks(m);
        return form;
    }

    /// <summary>Takes over what the book changed meanwhile: the checks, and the version that goes with them.</summary>
    public void TakeChecks(Mould m) => (Version, Checks, VolumeFactor, VolumeSpreadPercent) = (m.Version, [.. m.Checks], m.VolumeFactor, m.VolumeSpreadPercent);

    /// <summary>The record, from a form that the validator has passed. A factor found against other measures is let go.</summary>
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
        Readings = [.. Spec.Readings ?? []],
        Mesh = Needs is MouldNeeds.Mesh ? Mesh : null,
        Wall = WallMaterial.Length > 0 && WallMm is { } thick ? new(WallMaterial, thick, FloorMm ?? thick, WallLimitC) : null,
        Checks = Checks,
        VolumeFactor = Remeasured ? 1 : VolumeFactor,
        VolumeSpreadPercent = Remeasured ? null : VolumeSpreadPercent,
    };

    /// <summary>A dimension as typed, or its default.</summary>
    public double? Size(Dimension dimension) => Dimensions.GetValueOrDefault(dimension.Name) ?? dimension.Default;
}

/// <summary>What a mould needs before it can be kept; the limits are the engine's.</summary>
public sealed class MouldValidator : AbstractValidator<MouldForm>
{
    public MouldValidator()
    {
        RuleFor(m => m.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("Give the mould a name, such as “Pyramid 150, tall”.")
            .MaximumLength(100).WithMessage("Keep the name under 100 letters.");
        RuleFor(m => m.Notes).MaximumLength(1000).WithMessage("Keep the notes under 1000 letters.");
        RuleFor(m => m.Owned).Must(o => o is >= 0 and <= 10_000 && Math.Floor(o.Value) == o.Value).WithMessage("How many do you own? A whole number, 0 or more.");
        RuleFor(m => m.WallMm).Must((m, w) => w is not null || m.WallMaterial.Length == 0).WithMessage("How thick is its wall?")
            .Must(w => w is null or (> 0 and <= 200)).WithMessage("A wall is above 0 and at most 200 mm thick.");
        RuleFor(m => m.FloorMm).Must(w => w is null or (> 0 and <= 200)).WithMessage("A floor is above 0 and at most 200 mm thick.");
        RuleFor(m => m.WallLimitC).Must(c => c is null or (>= 30 and <= 300)).WithMessage("Must be between 30 and 300 °C.");
        RuleFor(m => m.Shape).Must(s => MouldShapes.Find(s) is not null).WithMessage("Choose a shape.");
        RuleFor(m => m).Custom((form, context) =>
        {
            foreach (var (field, said) in Complaints(form))
            {
                context.AddFailure(field, said);
            }
        });
    }

    private static IEnumerable<(string Field, string Said)> Complaints(MouldForm form) => form.Needs switch
    {
        MouldNeeds.Readings => Of(form.Fill),
        MouldNeeds.Mesh => Of(form.Mesh),
        _ => Measures(form),
    };

    private static IEnumerable<(string Field, string Said)> Measures(MouldForm form)
    {
        var missing = form.Asked.Select(d => (d.Name, Said: form.Size(d) is { } size ? d.Complaint(size) : $"{d.Label} is needed.")).Where(c => c.Said is not null).Select(c => (c.Name, c.Said!)).ToList();
        return missing.Count > 0 ? missing : MouldShapes.Find(form.Shape)?.Complaints(form.Spec.Dimensions.ToDictionary(d => d.Key, d => d.Value, StringComparer.Ordinal)) ?? [];
    }

    private static IEnumerable<(string Field, string Said)> Of(FillRows fill)
    {
        var unfinished = fill.Complaints().Select(c => ($"readings[{c.Row}].{c.Field}", c.Message)).ToList();
        return unfinished.Count > 0 ? unfinished : FillWords.Wrong(fill).Select(e => (e.Path, e.Message));
    }

    private static IEnumerable<(string Field, string Said)> Of(MouldMesh? mesh) => mesh switch
    {
        null => [("mesh", "Choose the file of the mesh.")],
        { Unit.Length: 0 } => [("mesh.unit", "Say which unit the file is in: the sizes beside each show which is right.")],
        _ => [],
    };
}

/// <summary>The engine's errors about a fill, at the rows that they were typed in.</summary>
internal static class FillWords
{
    /// <summary>Paths such as <c>readings[2].height</c>, or <c>readings</c> for the whole.</summary>
    public static IReadOnlyList<InputError> Wrong(FillRows fill)
    {
        var (errors, complete) = (new InputErrors(), fill.Complete);
        FillCheck.Usable([.. complete.Select(c => c.Reading)], "readings", errors);
        return [.. errors.All.Select(e => new InputError(Row(e.Path, complete), e.Message))];
    }

    /// <summary>The engine counts readings, the page counts rows.</summary>
    public static string Row(string path, IReadOnlyList<(int Row, FillReading Reading)> complete)
    {
        var (open, close) = (path.IndexOf('[', StringComparison.Ordinal), path.IndexOf(']', StringComparison.Ordinal));
        if (open < 0 || !int.TryParse(path.AsSpan(open + 1, close - open - 1), System.Globalization.CultureInfo.InvariantCulture, out var number) || number >= complete.Count)
        {
            return path;
        }

        var field = path.EndsWith("volumeMl", StringComparison.Ordinal) ? ".water" : path.EndsWith("heightMm", StringComparison.Ordinal) ? ".height" : "";
        return $"readings[{complete[number].Row}]{field}";
    }
}

using System.Globalization;
using Microsoft.AspNetCore.Components;
using Studio.Engine.Film;
using Studio.Pieces;
using Studio.Shell;

namespace Studio.Film;

/// <summary>A change of where a sheet stands; changes of one kind in a row are undone together.</summary>
public sealed record PlaceChange(string Kind, FilmSpec Place);

/// <summary>Where a sheet stands, in the fields that its placement needs.</summary>
public sealed partial class PlacementFields
{
    private const double SameMm = 0.05;

    private IReadOnlyList<double> faces = [];
    private IReadOnlyList<double> diagonals = [];
    private double shown;
    private object? seen;

    [Parameter, EditorRequired]
    public DesignSession Session { get; set; } = null!;

    [Parameter, EditorRequired]
    public FilmFigures Figures { get; set; } = null!;

    [Parameter]
    public string Units { get; set; } = "metric";

    [Parameter]
    public EventCallback<PlaceChange> Changed { get; set; }

    private FilmSpec Place => Figures.Sheet.Place;

    private IReadOnlyList<double> Faces => faces;

    private IReadOnlyList<double> Diagonals => diagonals;

    private double Shown => shown;

    private string Face => N(Faces.MinBy(f => Math.Abs(f - (Place.TurnDegrees ?? 0))));

    private string Diagonal => N(shown);

    private IEnumerable<(string Key, string Label, double TopMm)> Layers => Session.Good is not { } good ? []
        : good.Layers.Select((l, i) => (i.ToString(CultureInfo.InvariantCulture), $"layer {i + 1}, {(l.Name.Length > 0 ? l.Name : "without a name")}, at {Say.Length(l.ToMm, Units)}", l.ToMm));

    private string OnLayer => Layers.FirstOrDefault(l => Math.Abs(l.TopMm - Place.HeightMm) <= SameMm).Key ?? "";

    protected override void OnParametersSet()
    {
        if (!ReferenceEquals(seen, Place) && FilmTurns.Of(Session.Piece.Mould, Place) is { } turns)
        {
            (seen, faces, diagonals, shown) = (Place, turns.Faces, turns.Diagonals, turns.ShownDegrees);
        }
    }

    private static string N(double degrees) => degrees.ToString("0.######", CultureInfo.InvariantCulture);

    private static double? Number(ChangeEventArgs e) => double.TryParse(e.Value?.ToString(), NumberStyles.Float, CultureInfo.InvariantCulture, out var v) ? v : null;

    private static string DiagonalWords(double turn) => turn switch
    {
        > 0 and < 90 => $"front left to back right{Exactly(turn, 45)}",
        < 0 => $"front right to back left{Exactly(turn, -45)}",
        0 => "left to right",
        _ => "front to back",
    };

    private static string Exactly(double turn, double usual) => Math.Abs(turn - usual) < 1e-3 ? "" : string.Create(CultureInfo.InvariantCulture, $", {Math.Abs(turn):0.#}° in plan");

    private string FaceWords(int face) => Faces.Count == 4
        ? (string[])["the front", "the right side", "the back", "the left side"] is var words ? words[face] : ""
        : face == 0 ? "the front" : string.Create(CultureInfo.InvariantCulture, $"the face {Faces[face]:0.#}° round to the right");

    private RenderFragment Turn(string label, double otherwise) => builder =>
    {
        builder.OpenComponent<NumberField>(0);
        builder.AddAttribute(1, nameof(NumberField.Label), label);
        builder.AddAttribute(2, nameof(NumberField.Unit), "°");
        builder.AddAttribute(3, nameof(NumberField.Value), (double?)(Place.TurnDegrees ?? otherwise));
        builder.AddAttribute(4, nameof(NumberField.ValueChanged), EventCallback.Factory.Create<double?>(this, v => Put("turn", Place with { TurnDegrees = v ?? 0 })));
        builder.AddAttribute(5, nameof(NumberField.Immediate), true);
        builder.AddAttribute(6, nameof(NumberField.Wrong), Figures.Wrong("turnDegrees"));
        builder.AddAttribute(7, nameof(NumberField.Helper), "0 looks to the front; more turns it to the right");
        builder.CloseComponent();
    };

    private void LieOn(ChangeEventArgs e)
    {
        if (Layers.FirstOrDefault(l => l.Key == e.Value?.ToString()) is { Key: not null } layer)
        {
            _ = Put("", Place with { HeightMm = layer.TopMm });
        }
    }

    private Task Put(string kind, FilmSpec place) => Changed.InvokeAsync(new(kind, place));
}

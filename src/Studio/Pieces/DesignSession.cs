using Studio.Drawing;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Shell;

namespace Studio.Pieces;

/// <summary>One sitting at a design: every change recomputes at once, can be undone, and is told to the page.</summary>
public sealed partial class DesignSession
{
    private const int MostUndo = 100;

    private static readonly string[] Palette = ["#7d6a94", "#dbe6e8", "#b98a3d", "#5f8474", "#a4574a", "#4f6f91"];

    private readonly List<string> past = [];
    private string lastKind = "";
    private string kept;
    private int fresh;

    public DesignSession(PieceDesk desk)
    {
        Desk = desk;
        kept = desk.ReadAs;
        Figures = PieceBook.Figures(Piece, desk.Keepsakes);
        Good = Figures.Result;
    }

    /// <summary>Told after every change.</summary>
    public event Action? Changed;

    public PieceDesk Desk { get; private set; }

    public Piece Piece => Desk.Piece;

    /// <summary>What the design comes to now.</summary>
    public PieceFigures Figures { get; private set; }

    /// <summary>The last figures that could be worked out, so that a half-typed number does not empty the drawing.</summary>
    public LayersResult? Good { get; private set; }

    /// <summary>The layer that lies open, by its place from the bottom; −1 for none.</summary>
    public int Open { get; set; } = -1;

    /// <summary>Something differs from what is kept.</summary>
    public bool Dirty { get; private set; }

    public bool CanUndo => past.Count > 0;

    /// <summary>Fields in which something stands that is no number.</summary>
    public UnreadNumbers Unread { get; } = new();

    /// <summary>The mould's inner height [mm]; null while it cannot be made.</summary>
    public double? HeightMm => Piece.Mould is { } m && MouldShapes.Make(m.Spec) is { Ok: true } made ? made.Value.HeightMm : null;

    /// <summary>How many layers, from the bottom, are settled because the topmost of them is poured.</summary>
    public int Settled => Piece.Layers.FindLastIndex(l => Desk.Poured.Any(p => p.LayerId == l.Id)) + 1;

    /// <summary>Makes a change.</summary>
    /// <param name="kind">Changes of one kind in a row are undone together, such as typing in one field; empty for one of its own.</param>
    /// <param name="change">Changes <see cref="Piece"/>.</param>
    public void Do(string kind, Action change)
    {
        var before = DesignText.Write(Piece);
        change();
        var after = DesignText.Write(Piece);
        if (after == before)
        {
            return;
        }

        if (kind.Length == 0 || kind != lastKind)
        {
            past.Add(before);
            past.RemoveRange(0, Math.Max(0, past.Count - MostUndo));
        }

        lastKind = kind;
        Look(after);
    }

    /// <summary>Draws the page anew, such as when another layer lies open.</summary>
    public void Show() => Changed?.Invoke();

    /// <summary>The next change begins a new step of undo.</summary>
    public void Pause() => lastKind = "";

    /// <summary>Takes the last change back.</summary>
    public void Undo()
    {
        if (past.Count > 0)
        {
            var before = past[^1];
            past.RemoveAt(past.Count - 1);
            Take(before);
        }
    }

    /// <summary>Takes up a design that was written down before, as a change of its own.</summary>
    /// <returns>False when the text is no design of this piece.</returns>
    public bool TakeUp(string text)
    {
        var before = DesignText.Write(Piece);
        if (!DesignText.Lay(text, Piece, Desk.Moulds, Desk.Resins))
        {
            return false;
        }

        past.Add(before);
        lastKind = "";
        Unread.PutBack();
        Look(DesignText.Write(Piece));
        return true;
    }

    /// <summary>Goes on from what is on disk now.</summary>
    /// <param name="desk">Read anew.</param>
    /// <param name="mine">True to lay the present design over it, as a change that is not kept yet.</param>
    public void Reread(PieceDesk desk, bool mine)
    {
        var text = DesignText.Write(Piece);
        Desk = desk;
        kept = desk.ReadAs;
        Unread.PutBack();
        if (mine)
        {
            DesignText.Lay(text, Piece, desk.Moulds, desk.Resins);
        }

        Look(DesignText.Write(Piece));
    }

    /// <summary>The piece in section, the open layer marked.</summary>
    public SectionView? Section(bool asStands) =>
        PieceBook.Section(Piece, Good is { } g && g.Layers.Count == Piece.Layers.Count ? g : null, State, asStands, Figures.Sheets) is { } view
            ? view with { Bands = [.. view.Bands.Select(b => b.Layer.Key == Open ? b with { Layer = b.Layer with { Picked = true } } : b)] }
            : null;

    private LayerState State(PieceLayer layer) =>
        Desk.Poured.FirstOrDefault(p => p.LayerId == layer.Id) is { } poured ? poured.Curing ? LayerState.Curing : LayerState.Poured
        : Piece.Layers.IndexOf(layer) < Settled ? LayerState.Poured : LayerState.Planned;

    private void Take(string text)
    {
        DesignText.Lay(text, Piece, Desk.Moulds, Desk.Resins);
        lastKind = "";
        Unread.PutBack();
        Open = Math.Min(Open, Piece.Layers.Count - 1);
        Look(DesignText.Write(Piece));
    }

    private void Look(string text)
    {
        Dirty = text != kept;
        Figures = PieceBook.Figures(Piece, Desk.Keepsakes);
        Good = Figures.Result ?? (Piece.Layers.Count == 0 ? null : Good);
        Changed?.Invoke();
    }
}

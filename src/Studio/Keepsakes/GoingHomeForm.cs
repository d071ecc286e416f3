using FluentValidation;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>One parcel, or one hand-over at the door: what is in it, and who takes it.</summary>
public sealed class GoingHomeForm
{
    public List<GoingHomeRow> Rows { get; set; } = [];

    /// <summary>Finished castings that are in the parcel.</summary>
    public List<int> PieceIds { get; set; } = [];

    /// <summary>Who takes it.</summary>
    public string Whom { get; set; } = "";

    /// <summary>How the things are packed.</summary>
    public string Packing { get; set; } = "";

    /// <summary>The same for every send of one form, so that a parcel is noted once.</summary>
    public string SubmitKey { get; set; } = Guid.NewGuid().ToString("N");
}

/// <summary>One keepsake and how much of it goes.</summary>
public sealed class GoingHomeRow
{
    public int KeepsakeId { get; set; }

    /// <summary>True when it is in the parcel.</summary>
    public bool Goes { get; set; } = true;

    /// <summary>All that is here, or a part.</summary>
    public ActForm Much { get; set; } = new() { Act = CustodyKind.Returned, All = true };
}

/// <summary>A parcel has something in it and somebody who takes it.</summary>
internal sealed class GoingHomeValidator : AbstractValidator<GoingHomeForm>
{
    public GoingHomeValidator()
    {
        RuleFor(f => f.Rows).Must((f, r) => r.Exists(x => x.Goes) || f.PieceIds.Count > 0).WithMessage("Tick what goes home with this parcel.");
        RuleFor(f => f.Whom).Must(w => w.Trim().Length > 0).WithMessage("Say who takes it, or to whom it is sent.");
        RuleFor(f => f.Whom).MaximumLength(120).WithMessage("At most 120 characters for who takes it.");
        RuleFor(f => f.Packing).MaximumLength(500).WithMessage("At most 500 characters for how it is packed.");
    }
}

/// <summary>What the page of what goes home shows.</summary>
/// <param name="Here">What is here, and may go.</param>
/// <param name="Gone">What is not: a sentence for each.</param>
/// <param name="Staying">What is cast into a piece that does not go to the family: a line each.</param>
/// <param name="Pieces">Castings made for them that stand here.</param>
public sealed record GoingHomeView(
    int CommissionId, string Number, string Title, string Remembers, string Customer, IReadOnlyList<GoingHomeLine> Here, IReadOnlyList<GoingHomeLine> Gone, IReadOnlyList<string> Staying, IReadOnlyList<PieceHere> Pieces);

/// <summary>One keepsake on that page.</summary>
/// <param name="Balance">Where all of it is, in whole sentences.</param>
/// <param name="Meant">What the family permits.</param>
/// <param name="Yet">What is still to be done with it before it goes, a whole sentence; empty where nothing is. Such a thing is not ticked.</param>
public sealed record GoingHomeLine(int Id, string EntryNumber, string Description, string Place, CustodyState Now, string Balance, string Meant, string Yet);

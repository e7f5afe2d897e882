using CutShop.Shop.Jobs;
using CutShop.Shop.Stock;
using CutShop.Shop.Store;
using CutShop.Takeoff.JobFile;
using CutShop.Takeoff.Lengths;
using CutShop.Takeoff.Result;
using CutShop.Takeoff.Tables;

namespace CutShop.Shop.Orders;

/// <summary>A draft with all that the order desk is shown of it.</summary>
/// <param name="Form">What was typed.</param>
/// <param name="Reading">What was understood.</param>
/// <param name="Prices">The prices that are valid today, or null.</param>
/// <param name="Currency">The sign before amounts.</param>
/// <param name="Stored">The stored job that has its number, or null.</param>
public sealed record DraftPreview(DraftForm Form, DraftReading Reading, PriceList? Prices, string Currency, JobOfNumber? Stored)
{
    /// <summary>True where the job of its number was cancelled, so that nothing can come of it.</summary>
    public bool IsCancelled => Stored is { IsCancelled: true };

    /// <summary>True where it changes a stored job, as the desk said.</summary>
    public bool IsChange => Stored is { IsCancelled: false } stored && Form.IsChangeOf(stored.Number);

    /// <summary>True where it has the number of a stored job and the desk is yet to say whether it changes that job.</summary>
    public bool IsAsked => Stored is { IsCancelled: false } && !IsChange;

    /// <summary>
    /// What the desk itself has to say, by field, beside what was understood: that the number is a stored job's, pulls over the shop's limit,
    /// and what each manner of letting natural rope shrink comes to.
    /// </summary>
    public IReadOnlyDictionary<JobPlace, IReadOnlyList<FieldNote>> DeskNotes { get; init; } = new Dictionary<JobPlace, IReadOnlyList<FieldNote>>();

    /// <summary>Ropes of which a piece is longer than the shop can cut, with what to offer as the job's longest cut.</summary>
    public IReadOnlyList<LongRun> LongRuns { get; init; } = [];

    /// <summary>Where the share stands that natural rope loses.</summary>
    public static JobPlace LosesField { get; } = JobPlace.Job["allowances"]["wetting"]["loses"];

    /// <summary>Where the figures of each manner of letting natural rope shrink stand.</summary>
    public static JobPlace MannerField { get; } = JobPlace.Job["allowances"]["wetting"]["manner"];

    /// <summary>With what the shop measured that the draft's rope loses, beside the field that asks for it.</summary>
    internal DraftPreview WithLoss(LossOffer? offer) => offer is null ? this : this with
    {
        DeskNotes = new Dictionary<JobPlace, IReadOnlyList<FieldNote>>(DeskNotes)
        {
            [LosesField] = [new(NoteKind.Echo, OrderReplies.Of("LotLoses", offer.Loses, offer.Lot, offer.Samples, offer.Adds).ToString())],
        },
    };

    internal DraftPreview WithDeskNotes(int pullLimit, ShopTables tables)
    {
        var notes = (Reading.Takeoff is { } takeoff ? PullLimit.Over(takeoff, pullLimit) : [])
            .Select(pull => (pull.Place, Note: new FieldNote(NoteKind.Warning, pull.Says.ToString())))
            .Concat(WettingChoices.Of(Reading, Form, tables).Select(choice => (Place: MannerField, Note: new FieldNote(NoteKind.Echo, choice.Says.ToString()))));
        if (IsAsked)
            notes = notes.Prepend((JobPlace.Job["number"], new(NoteKind.Error, Stored!.Says.ToString())));
        return this with { DeskNotes = notes.GroupBy(one => one.Place, one => one.Note).ToDictionary(field => field.Key, IReadOnlyList<FieldNote> (field) => [.. field]) };
    }
}

/// <summary>A rope of which a piece is longer than the shop can cut.</summary>
/// <param name="Rope">The rope.</param>
/// <param name="Cut">The longest cut of the draft.</param>
/// <param name="Longest">The longest piece that the shop can cut.</param>
public sealed record LongRun(Rope Rope, Length Cut, LongestPiece Longest);

/// <summary>Shows drafts while they are typed.</summary>
public sealed class DraftPreviews(ShopDatabase database, ShopTablesShelf tables)
{
    /// <summary>
    /// A version of a draft with what was typed since in some of its fields; null where there is no such draft, or the version is too old
    /// to be kept.
    /// </summary>
    public DraftPreview? Of(long id, long version, IReadOnlyDictionary<string, string> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return database.Read(session => DraftShelf.FormOf(session, id, version) is { } form ? Of(session, DraftFields.With(form, typed)) : null);
    }

    /// <summary>A form as it is.</summary>
    public DraftPreview Of(DraftForm form)
    {
        ArgumentNullException.ThrowIfNull(form);
        return database.Read(session => Of(session, form));
    }

    private DraftPreview Of(ShopSession session, DraftForm form)
    {
        var now = tables.Current(session);
        var reading = DraftReading.Of(form, now);
        return new DraftPreview(
            form,
            reading,
            PriceBook.On(session, session.Today),
            PriceBook.Currency(session),
            JobChanging.OfNumber(session, form.Number.Trim()))
        {
            LongRuns = reading.Takeoff is { } takeoff ? LongRunsOf(session, takeoff) : [],
        }.WithDeskNotes(PullLimit.Read(session), now).WithLoss(OfferFor(session, form));
    }

    private static IReadOnlyList<LongRun> LongRunsOf(ShopSession session, JobTakeoff takeoff) =>
    [
        .. from piece in takeoff.Pieces
           group piece.Cut by (piece.Rope, piece.IsPreshrunk) into alike
           let longest = LongestCut.Of(session, RopeKind.Of(alike.Key.Rope, alike.Key.IsPreshrunk))
           where alike.Max() > longest?.Length
           select new LongRun(alike.Key.Rope, alike.Max(), longest!),
    ];

    /// <summary>What the shop measured that the draft's rope loses, or null.</summary>
    private static LossOffer? OfferFor(ShopSession session, DraftForm form)
    {
        return Rope.Materials.TryGetValue(form.Rope.Material, out var material) && TypedLength.Diameter(form.Rope.Diameter) is { IsGood: true } diameter
            ? WettingShelf.Offer(session, new Rope(material, diameter.Value) { Construction = OrNull(form.Rope.Construction), Colour = OrNull(form.Rope.Colour) })
            : null;

        static string? OrNull(string typed) => typed.Trim() is { Length: > 0 } text ? text : null;
    }
}

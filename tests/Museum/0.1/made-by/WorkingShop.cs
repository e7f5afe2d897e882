using System.Globalization;
using CutShop.CutPlan;
using CutShop.Shop;
using CutShop.Takeoff;

namespace CutShop.Museum;

/// <summary>A shop in which people work by the shop's own classes. A step that is refused ends the making, so that nothing of the plan is missing.</summary>
internal sealed class WorkingShop(ShopDatabase database, MuseumClock clock)
{
    private static readonly PlanBudget Budget = new(TimeSpan.FromSeconds(3), UseSolver: false);

    private int _key;

    public ShopDatabase Database => database;

    public MuseumClock Clock => clock;

    public ShopTablesShelf Tables { get; } = new(database, ShopTables.Standard);

    public JobIntake Intake { get; } = new(database, ShopTables.Standard);

    public JobShelf Jobs { get; } = new(database, ShopTables.Standard);

    public JobRelease Release { get; } = new(database);

    public CutBench Cut { get; } = new(database);

    public DrillBench Drill { get; } = new(database);

    public PackingBench Packing { get; } = new(database);

    public CoilStock Stock { get; } = new(database);

    public CutPlanDesk Plans { get; } = new(database);

    public DraftShelf Drafts { get; } = new(database);

    public QuoteDesk Quotes => new(database, Tables);

    public static Length In(string text) => LengthText.Parse(text).OrThrow();

    public static RopeKind Kind(RopeMaterial material, string diameter) => new(material, In(diameter), RopeKind.ThreeStrand);

    /// <summary>A key that no request had before.</summary>
    public string Key() => string.Create(CultureInfo.InvariantCulture, $"museum {++_key}");

    public void Pass(double minutes) => clock.Now += TimeSpan.FromMinutes(minutes);

    public async Task DoneAsync(Task<BenchAnswer> work)
    {
        var answer = await work;
        if (answer.Problem is { } problem)
            throw new InvalidOperationException(problem);
        Pass(2);
    }

    /// <summary>A step that the shop may refuse, as it does where another is in the way.</summary>
    public async Task<bool> TryAsync(Task<BenchAnswer> work)
    {
        Pass(2);
        return (await work).IsDone;
    }

    public static void Done(string? problem)
    {
        if (problem is not null)
            throw new InvalidOperationException(problem);
    }

    public async Task TakeInAsync(Job job, string who = "Ada")
    {
        if (await Intake.TakeInAsync(job, who) != IntakeOutcome.TakenIn)
            throw new InvalidOperationException($"{job.Number} is not taken in.");
        Pass(5);
    }

    public StoredJob Job(string number) => Jobs.Find(number) ?? throw new InvalidOperationException($"{number} is not there.");

    public PieceCode Code(string number, string run) => Job(number).Pieces.Single(piece => piece.Run == run).Code;

    public async Task<string> HangAsync(RopeMaterial material, string diameter, string lot, string length, string place, string? whenFull = null)
    {
        var answer = await Stock.ReceiveAsync(new(Kind(material, diameter), lot, In(length), place, whenFull is null ? null : In(whenFull)), "Ada", Key());
        Done(answer.Problem);
        Pass(1);
        return answer.Mark;
    }

    public async Task<long> DraftPlanAsync(RopeKind kind, DateOnly? dueBy = null)
    {
        var draft = await Plans.DraftAsync(kind, dueBy, Budget, "Ada");
        Done(draft.IsDone ? null : string.Join("; ", draft.Problems));
        Pass(3);
        return draft.PlanId;
    }

    public async Task<long> PlanAsync(RopeKind kind, DateOnly? dueBy = null)
    {
        var id = await DraftPlanAsync(kind, dueBy);
        Done((await Plans.AcceptAsync(id, "Ada")) is { IsDone: false } refused ? string.Join("; ", refused.Problems) : null);
        Pass(3);
        return id;
    }

    /// <summary>Takes a piece to the bench and ticks its steps, as many as asked; measured as long as asked and some more or less.</summary>
    public async Task CutAsync(PieceCode code, string who, CutStep upTo, string? off = null)
    {
        await DoneAsync(Cut.TakeAsync(code, who, Key()));
        for (var step = CutStep.PullAndMark; step <= upTo; step++)
        {
            if (step == CutStep.Measure)
            {
                var work = Cut.Find(code)!;
                await DoneAsync(Cut.MeasureAsync(code, off is null ? work.Cut : work.Cut + LengthText.Parse(off, allowNegative: true).OrThrow(), putAside: false, who, Key()));
            }
            else
            {
                await DoneAsync(Cut.TickAsync(code, step, who, Key()));
            }
        }
    }

    /// <summary>Takes a post to the bench and ticks so many of its drillings; all of them and the rope through unless told.</summary>
    public async Task DrillAsync(string job, string post, string who, int? steps = null)
    {
        await DoneAsync(Drill.TakeAsync(job, post, who, Key()));
        var work = Drill.Find(job, post)!;
        for (var step = (int)work.Steps + 1; step <= (steps ?? (int)work.All); step++)
            await DoneAsync(Drill.TickAsync(job, post, step, who, Key()));
        if (steps is null)
            await DoneAsync(Drill.FitsAsync(job, post, who, Key()));
    }

    public async Task<long> DraftAsync(DraftForm form)
    {
        var id = await Drafts.StartAsync(form, "Dee", Key());
        Pass(4);
        return id;
    }

    /// <summary>Changes a stored job by a draft, as the desk does after it was shown what changes.</summary>
    public async Task ChangeAsync(string number, Func<DraftForm, DraftForm> change)
    {
        var form = change(DraftOf.Job(Job(number).Takeoff.Job)!);
        var draft = await DraftAsync(form);
        var next = DraftReading.Of(form, Tables.Current()).Takeoff ?? throw new InvalidOperationException($"The change of {number} has errors.");
        var changing = new JobChanging(database, Tables);
        var answer = await changing.AcceptAsync(draft, changing.Compare(next.Job)!.Token, "Dee");
        Done(answer.Problem);
        Pass(5);
    }
}

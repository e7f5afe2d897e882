using CutShop.Testing.Jobs;
using CutShop.Testing.Stores;

namespace CutShop.Testing.Trust;

/// <summary>
/// A day at the cut bench and at packing on which people slip: they tap twice, out of turn and at another's piece, send a tap again whose answer
/// was lost, type wrong figures, scan wrong labels, take over, hand back, and lose coils. Whatever they did, the books are whole, each
/// piece can be finished or handed back by whoever has it, and what is finished can be taken back until it is packed.
/// </summary>
internal sealed class RandomDay
{
    private const int Slips = 40;

    private static readonly string[] People = ["Cai", "Dot", "Ada"];
    private static readonly string[] Lengths = ["77 1/2", "70", "77 7/16", "78", "92", "1012 1/4", "10", "78 1/2", "0"];
    private static readonly string[] Cuts = ["77 1/2", "101 1/2", "65 1/2", "77 1/2", "89 1/2"];
    private static readonly RopeKind Rope = new(RopeMaterial.Polypropylene, Inches("1 1/2"), RopeKind.ThreeStrand);

    private readonly Random _random;
    private readonly ShopDatabase _database;
    private readonly CutBench _cut;
    private readonly PackingBench _packing;
    private readonly List<PieceCode> _codes = [];
    private int _keys;

    private RandomDay(ShopDatabase database, int seed) =>
        (_database, _random, _cut, _packing) = (database, new(seed), new(database), new(database));

    /// <summary>What the day of a seed left wrong, or null.</summary>
    public static async Task<string?> OfAsync(int seed)
    {
        using var store = new TestStore();
        using var database = store.Open(TimeProvider.System);
        var day = new RandomDay(database, seed);
        await day.PrepareAsync();
        var key = day.Key();
        for (var slip = 0; slip < Slips; slip++)
        {
            // Now and then a tap comes again with the key of the one before, as after a lost answer.
            key = day._random.Next(6) == 0 ? key : day.Key();
            await day.SlipAsync(key);
        }
        return await day.WrongAsync() is { } wrong ? $"day {seed}: {wrong}" : null;
    }

    private static Length Inches(string number) => LengthText.Parse(number + " in").OrThrow();

    /// <summary>A key that no request had before.</summary>
    private string Key() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"k{++_keys}");

    private async Task PrepareAsync()
    {
        var stock = new CoilShelf(_database);
        await stock.ReceiveAsync(new(Rope, "L1", Length.Foot * 60, "rack 1"), "Ada", Key());
        await stock.ReceiveAsync(new(Rope, "L2", Length.Foot * 40, "rack 1"), "Ada", Key());
        var intake = new JobIntake(_database, ShopTables.Standard);
        for (var i = 0; i < Cuts.Length; i++)
        {
            var number = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"LQ-{i + 1}");
            await intake.TakeInAsync(SmallJobs.OnePiece(number, LengthText.Brief(Inches(Cuts[i]) - Inches("5 1/2"))), "Ada");
            _codes.Add(new JobShelf(_database).Find(number)!.Pieces[0].Code);
        }
        var plans = new CutPlanDesk(_database);
        var draft = await plans.DraftAsync(Rope, dueBy: null, new PlanBudget(TimeSpan.FromSeconds(10), UseSolver: false), "Ada");
        await plans.AcceptAsync(draft.PlanId, "Ada");
    }

    private async Task SlipAsync(string key)
    {
        var who = People[_random.Next(People.Length)];
        // Most taps are at the piece that the person has, some at another.
        var code = _random.Next(4) > 0 && _cut.Of(who) is { } mine ? mine.Code : _codes[_random.Next(_codes.Count)];
        var length = Inches(Lengths[_random.Next(Lengths.Length)]);
        _ = _random.Next(18) switch
        {
            0 or 1 => await _cut.NextAsync(who, key),
            2 => await _cut.TakeAsync(code, who, key),
            3 or 4 or 5 or 6 => await _cut.TickAsync(code, (CutStep)_random.Next(1, 5), who, key),
            7 or 8 or 9 => await _cut.MeasureAsync(code, _random.Next(2) == 0 ? _cut.Find(code)!.Cut : length, isSure: _random.Next(3) == 0, who, key),
            10 => await _cut.UndoStepAsync(code, (CutStep)_random.Next(1, 5), who, key),
            11 => await _cut.HandBackAsync(code, who, key),
            12 => await _cut.TakeOverAsync(code, who, key),
            13 => await _cut.ScanAsync(code, _random.Next(3) == 0 ? _codes[_random.Next(_codes.Count)].ToString() : $"K000{_random.Next(4)}", who, key),
            14 => _random.Next(4) switch
            {
                0 => await _cut.CoilEndsAsync(code, length, who, key),
                1 => await _cut.BadStretchAsync(code, length, who, key),
                2 => await _cut.TakeCoilBackAsync($"K000{_random.Next(4)}", who, key),
                _ => await _cut.CoilNotFoundAsync(code, who, key),
            },
            15 => await _cut.RejectAsync(code, "frayed", isSound: _random.Next(2) == 0, who, key),
            16 => await _cut.UndoAsync(code, "tapped by mistake", who, key),
            _ => _random.Next(2) == 0 ? await _packing.PackAsync(_cut.Find(code)!.Job, code, who, key) : await _packing.UnpackAsync(code, who, key),
        };
    }

    private async Task<string?> WrongAsync()
    {
        foreach (var who in People)
        {
            if (await WayOnAsync(who) is { } stuck)
                return stuck;
        }
        foreach (var code in _codes)
        {
            if (await TakenBackAsync(code) is { } kept)
                return kept;
        }
        return _database.Read(session => ShopCheck.OfRows(session).Select(finding => finding.ToString()).FirstOrDefault());
    }

    /// <summary>Somebody who has a piece gets on: by doing what is to be done next, or else by undoing what was done and handing it back.</summary>
    private async Task<string?> WayOnAsync(string who)
    {
        while (_cut.Of(who) is { } work)
        {
            var answer = work.Next == CutStep.Measure
                ? await _cut.MeasureAsync(work.Code, work.Cut, isSure: true, who, Key())
                : await _cut.TickAsync(work.Code, work.Next!.Value, who, Key());
            if (answer.IsDone)
                continue;
            while (_cut.Find(work.Code)!.LastDone is { } last)
            {
                answer = await _cut.UndoStepAsync(work.Code, last, who, Key());
                if (!answer.IsDone)
                    return $"{who} cannot undo {last} of {work.Code}: {answer.Problem}";
            }
            answer = await _cut.HandBackAsync(work.Code, who, Key());
            if (!answer.IsDone)
                return $"{who} cannot hand back {work.Code}: {answer.Problem}";
        }
        return null;
    }

    /// <summary>A finished piece that is not packed can be measured again, and its rope is on its coil as before.</summary>
    private async Task<string?> TakenBackAsync(PieceCode code)
    {
        if (_cut.Find(code) is not { State: TicketStates.Cut } work)
            return null;
        foreach (var act in new Func<Task<BenchAnswer>>[]
        {
            () => _cut.MeasureAgainAsync(code, "Ada", Key()),
            () => _cut.MeasureAsync(code, work.Cut, isSure: true, "Ada", Key()),
            () => _cut.TickAsync(code, CutStep.LabelAndTie, "Ada", Key()),
        })
        {
            if (await act() is { IsDone: false } answer)
                return $"{code} is not taken back and finished again: {answer.Problem}";
        }
        return null;
    }
}

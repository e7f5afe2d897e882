namespace CutShop.Testing.Trust;

/// <summary>Drills post after post.</summary>
internal sealed class Driller(KillRun run, string name, string password) : ShopClient(run, name, password)
{
    protected override string FormPage => "/drill";

    protected override async Task DoSomethingAsync(CancellationToken cancel)
    {
        var (to, problem) = await TapAsync("/drill?handler=Next", cancel);
        if (problem is not null)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(30), cancel);
            return;
        }
        var ticket = to["/drill/".Length..];
        Told.Is(ticket, "at the bench 0");
        // Every bore, and one of the screw holes by itself; the others are in with the last tap.
        for (var drilling = 1; drilling <= KillRun.RowsAJob + 1; drilling++)
            await MoveAsync(ticket, $"at the bench {drilling}", $"{to}?handler=Tick", cancel, ("drilling", $"{drilling}"));
        await MoveAsync(ticket, $"drilled {2 * KillRun.RowsAJob}", $"{to}?handler=Fits", cancel);
    }
}

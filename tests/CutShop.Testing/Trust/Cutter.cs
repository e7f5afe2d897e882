namespace CutShop.Testing.Trust;

/// <summary>Cuts piece after piece and packs it; now and then one is cut too short and put aside.</summary>
internal sealed class Cutter(KillRun run, string name, string password) : ShopClient(run, name, password)
{
    private const int OneInSoManyIsShort = 8;

    private int _cuts;

    protected override string FormPage => "/cut";

    protected override async Task DoSomethingAsync(CancellationToken cancel)
    {
        var (to, problem) = await TapAsync("/cut?handler=Next", cancel);
        if (problem is not null)
        {
            await Task.Delay(TimeSpan.FromMilliseconds(30), cancel);
            return;
        }
        var code = to["/cut/".Length..];
        Told.Is(code, "at the bench 0");
        foreach (var step in new[] { 1, 2 })
            await MoveAsync(code, $"at the bench {step}", $"{to}?handler=Tick", cancel, ("step", $"{step}"));
        if (++_cuts % OneInSoManyIsShort == 0)
        {
            Told.Forget(code);
            await TapAsync($"{to}?handler=Measure", cancel, ("measured", "70 in"), ("sure", "true"));
            return;
        }
        await MoveAsync(code, "at the bench 3", $"{to}?handler=Measure", cancel, ("measured", KillRun.Measured));
        await MoveAsync(code, "cut 4", $"{to}?handler=Tick", cancel, ("step", "4"));
        var parcel = (await GetAsync($"/scan?text={code}&at=pack", cancel)).To!.Split('?')[0];
        await MoveAsync(code, "packed 4", $"{parcel}?handler=Pack", cancel, ("scan", code));
    }
}

namespace CutShop.CutPlan.Tests;

/// <summary>Keeps all progress told, in order and at once.</summary>
internal sealed class Told : IProgress<PlanProgress>
{
    public List<PlanProgress> All { get; } = [];

    public void Report(PlanProgress value) => All.Add(value);
}

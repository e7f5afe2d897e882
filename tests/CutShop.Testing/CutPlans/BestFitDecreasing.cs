namespace CutShop.Testing.CutPlans;

/// <summary>The plain rule that cut plans are compared with.</summary>
internal static class BestFitDecreasing
{
    /// <summary>
    /// What the plain rule would do, to compare with: longest piece first, into the tightest coil already cut from, else the
    /// tightest offcut, full coil or longest coil to buy. Lots are chosen as they come out best.
    /// </summary>
    /// <returns>How it does by each aim, or null where it leaves a piece uncut or the request has problems.</returns>
    public static PlanAims? Aims(CutRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        if (RequestCheck.Of(request, PlanBudget.Default).Count > 0 || RequestCheck.OfRoom(request, request.Pieces).Count > 0)
            return null;
        var stock = new PlanSheet(request, [.. request.Pieces]).Stock;
        if (stock.Kinds.Count == 0)
            return null;
        var task = stock.Standard.Count == 0 ? stock.With([]) : stock.Plenty();
        PlanAims? best = null;
        foreach (var cuts in LotChoices.Of(task).Select(lots => TightestFit.Of(task, lots)).OfType<int[][]>())
        {
            var aims = task.AimsOf(cuts);
            best = best is null || aims < best ? aims : best;
        }
        return best;
    }
}

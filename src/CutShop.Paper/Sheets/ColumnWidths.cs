namespace CutShop.Paper.Sheets;

/// <summary>Shares a width between columns.</summary>
internal static class ColumnWidths
{
    /// <summary>Natural widths and an equal share of what is over where all fit; else the widest columns give way first.</summary>
    public static double[] Share(IReadOnlyList<double> natural, double room)
    {
        var spare = room - natural.Sum();
        if (spare >= 0)
            return [.. natural.Select(w => w + spare / natural.Count)];
        var cap = CapThatFits(natural, room);
        return [.. natural.Select(w => Math.Min(w, cap))];
    }

    private static double CapThatFits(IReadOnlyList<double> natural, double room)
    {
        var left = room;
        var open = natural.Count;
        foreach (var w in natural.Order())
        {
            if (w * open >= left)
                return left / open;
            left -= w;
            open--;
        }
        return room;
    }
}

namespace CutShop.CutPlan.EqualCoils;

/// <summary>Fewest coils by the room that pieces take up (the bound known as L2): sound, and quick.</summary>
internal static class RoomBound
{
    /// <summary>
    /// For each short length: pieces too long to share a coil with one that short take a coil each; the middling ones
    /// fill what those over half leave; what is over takes coils of its own.
    /// </summary>
    public static int Of(PieceMix mix)
    {
        var bound = (int)((mix.Total + mix.Room - 1) / mix.Room);
        foreach (var shortest in mix.Sizes.Where(size => size <= mix.Room / 2).Append(0))
        {
            long alone = 0, overHalf = 0, overHalfRoom = 0, middling = 0;
            for (var kind = 0; kind < mix.Kinds; kind++)
            {
                long size = mix.Sizes[kind], count = mix.Counts[kind];
                if (size > mix.Room - shortest)
                    alone += count;
                else if (2 * size > mix.Room)
                    (overHalf, overHalfRoom) = (overHalf + count, overHalfRoom + ((mix.Room - size) * count));
                else if (size >= shortest)
                    middling += size * count;
            }
            var over = Math.Max(0, middling - overHalfRoom);
            bound = Math.Max(bound, (int)(alone + overHalf + ((over + mix.Room - 1) / mix.Room)));
        }
        return bound;
    }
}

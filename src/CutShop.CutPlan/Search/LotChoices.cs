namespace CutShop.CutPlan.Search;

/// <summary>Which lot each job that wants one may have.</summary>
internal static class LotChoices
{
    private const int Most = 200;

    /// <summary>Choices by room, roughly the roomiest first; each gives a lot by job. One empty choice where no job wants one lot.</summary>
    public static List<int[]> Of(CutTask task)
    {
        var demand = new long[task.Jobs];
        var longest = new long[task.Jobs];
        foreach (var kind in task.Kinds.Where(kind => kind.Job >= 0))
        {
            demand[kind.Job] += kind.Need * kind.Count;
            longest[kind.Job] = Math.Max(longest[kind.Job], kind.Need);
        }
        var room = new long[task.Lots];
        var longestRoom = new long[task.Lots];
        foreach (var coil in task.Coils)
        {
            room[coil.Lot] += coil.Room;
            longestRoom[coil.Lot] = Math.Max(longestRoom[coil.Lot], coil.Room);
        }
        var choices = new List<int[]>();
        var chosen = new int[task.Jobs];
        Choose(0);
        return choices;

        void Choose(int job)
        {
            if (choices.Count >= Most)
                return;
            if (job == task.Jobs)
            {
                choices.Add((int[])chosen.Clone());
                return;
            }
            foreach (var lot in Enumerable.Range(0, task.Lots).OrderByDescending(lot => room[lot]))
            {
                if (!task.MayHave(job, lot) || room[lot] < demand[job] || longestRoom[lot] < longest[job])
                    continue;
                chosen[job] = lot;
                room[lot] -= demand[job];
                Choose(job + 1);
                room[lot] += demand[job];
            }
        }
    }
}

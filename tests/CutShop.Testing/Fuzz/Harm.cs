namespace CutShop.Testing.Fuzz;

/// <summary>What an input did that no input may do, in words; null where it did no harm.</summary>
internal static class Harm
{
    /// <summary>A job file gives a job that can be taken off, or problems that each say where and what.</summary>
    public static string? OfJobFile(byte[] file) => Of(() =>
    {
        var reading = JobFileReader.Read(file);
        if (reading.Job is null == (reading.Problems.Count == 0))
            return "a job and problems, or neither";
        if (reading.Problems.Any(problem => !problem.Path.StartsWith('$') || problem.Text.Length == 0))
            return "a problem without a place or a text";
        if (reading.Job is { } job)
            TakeoffJson.Write(JobTakeoff.Of(job, ShopTables.Standard), Stream.Null);
        return null;
    });

    /// <summary>A length gives a length that prints and reads back as itself, or a problem on one line.</summary>
    public static string? OfLength(string text) => Of(() =>
    {
        foreach (var allowNegative in new[] { false, true })
        {
            var read = LengthText.Parse(text, allowNegative);
            if (!read.IsGood && (read.Problem!.Length == 0 || read.Problem.Any(char.IsControl)))
                return "a problem that says nothing, or that breaks the line";
            if (read.IsGood && LengthText.Parse(LengthText.Exact(read.Value), allowNegative: true) is var again && (!again.IsGood || again.Value != read.Value))
                return $"{LengthText.Exact(read.Value)} does not read back as itself";
            if (read is { IsGood: true, Value.IsNegative: true } && !allowNegative)
                return "a negative length where none is accepted";
            foreach (var unit in new[] { Length.Inch, Length.Metre })
            {
                var bare = LengthText.Parse(text, allowNegative, unit);
                if (read.IsGood && bare != read)
                    return $"{text} means another length where a bare number may have a unit";
                if (!bare.IsGood && (bare.Problem!.Length == 0 || bare.Problem.Any(char.IsControl)))
                    return "a problem that says nothing, or that breaks the line";
            }
        }
        return null;
    });

    /// <summary>A code gives the code that was meant, or a problem; one symbol for another is never taken.</summary>
    public static string? OfCode(PieceCode meant, string typed) => Of(() =>
    {
        var read = PieceCode.Parse(typed);
        if (!read.IsGood)
            return read.Problem!.Length == 0 ? "a problem that says nothing" : null;
        var wrong = read.Value.Plain.Zip(meant.Plain, (one, other) => one != other).Count(isWrong => isWrong);
        return wrong == 1 ? $"{meant.Plain} with one symbol wrong was taken as {read.Value.Plain}" : null;
    });

    private static string? Of(Func<string?> harm)
    {
        try
        {
            return harm();
        }
#pragma warning disable CA1031 // Whatever is thrown is what is looked for.
        catch (Exception e)
#pragma warning restore CA1031
        {
            return e.ToString();
        }
    }
}

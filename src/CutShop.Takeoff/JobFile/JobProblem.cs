namespace CutShop.Takeoff.JobFile;

/// <summary>One thing wrong with a job file.</summary>
/// <param name="Path">Where, as a JSON path such as <c>$.lines[0].posts[1].across</c>.</param>
/// <param name="Value">The value there as JSON, cut short where it is long; empty where it is missing.</param>
/// <param name="Text">What is wrong and what is accepted.</param>
public sealed record JobProblem(string Path, string Value, string Text)
{
    /// <summary>The problem on one line.</summary>
    public override string ToString() => Value.Length == 0 ? $"{Path}: {Text}" : $"{Path}: {Value}: {Text}";
}

/// <summary>What reading a job file gave: a job, or every problem with it.</summary>
/// <param name="Job">The job, or null where there is any problem.</param>
/// <param name="Problems">Every problem: those of single fields in the order of the file, then what does not go together.</param>
public sealed record JobFileReading(Job? Job, IReadOnlyList<JobProblem> Problems);

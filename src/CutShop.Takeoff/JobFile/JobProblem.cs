using CutShop.Takeoff.Words;

namespace CutShop.Takeoff.JobFile;

/// <summary>One thing wrong with a job.</summary>
/// <param name="Place">Where.</param>
/// <param name="Value">The value there, cut short where it is long; empty where it is missing.</param>
/// <param name="Sentence">What is wrong and what is accepted.</param>
public sealed record JobProblem(JobPlace Place, string Value, Sentence Sentence)
{
    /// <summary>Where, as a JSON path such as <c>$.lines[0].posts[1].across</c>.</summary>
    public string Path => Place.ToString();

    /// <summary>What is wrong and what is accepted, in English.</summary>
    public string Text => Sentence.ToString();

    /// <summary>The problem on one line.</summary>
    public override string ToString() => Value.Length == 0 ? $"{Path}: {Text}" : $"{Path}: {Value}: {Text}";
}

/// <summary>What reading a job gave: a job, or every problem with it.</summary>
/// <param name="Job">The job, or null where there is any problem.</param>
/// <param name="Problems">Every problem: those of single fields in the order of the job, then what does not go together.</param>
public sealed record JobFileReading(Job? Job, IReadOnlyList<JobProblem> Problems);

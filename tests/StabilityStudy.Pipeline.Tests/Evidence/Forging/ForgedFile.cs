namespace StabilityStudy.Pipeline.Tests.Evidence.Forging;

/// <summary>A file as somebody makes it who has the program's code, and keys of their own, and wants more believed than is true.</summary>
/// <param name="Name">What was done.</param>
/// <param name="Part">Which of the four parts of a verification must fail, from 1.</param>
/// <param name="Words">What an inspector needs to read there.</param>
/// <param name="Make">Makes it.</param>
internal sealed record ForgedFile(string Name, int Part, string Words, Func<byte[]> Make)
{
    public override string ToString() => Name;
}

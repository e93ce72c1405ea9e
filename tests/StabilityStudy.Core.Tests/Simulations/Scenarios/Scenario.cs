using StabilityStudy.Statistics.Resampling;

namespace StabilityStudy.Core.Tests.Simulations.Scenarios;

/// <summary>Invented studies of one kind, each drawn and concluded anew, and how often they claim.</summary>
/// <param name="Section">Heading under which its rate is printed.</param>
/// <param name="Data">How the data arise, in words.</param>
/// <param name="Specimens">Specimens a study.</param>
/// <param name="Reading">How its rate is to be read.</param>
/// <param name="Claims">Draws one study and tells whether it claims.</param>
internal sealed record Scenario(
    string Section,
    string Data,
    int Specimens,
    Reading Reading,
    Func<SeededRandom, bool> Claims
)
{
    /// <summary>How many times more work one study is than a usual one.</summary>
    public int Work { get; init; } = 1;

    /// <summary>The seed hangs on the words alone, so a short run gives the beginning of a long one.</summary>
    public ulong Seed
    {
        get
        {
            // FNV-1a, 64 bits.
            var hash = 14695981039346656037;
            foreach (var letter in FormattableString.Invariant($"{Section}|{Data}|{Specimens}"))
            {
                hash = unchecked((hash ^ letter) * 1099511628211);
            }

            return hash;
        }
    }

    /// <summary>Draws so many studies.</summary>
    public SimulatedRate Run(int studies)
    {
        var random = new SeededRandom(Seed);
        var claims = 0;
        for (var study = 0; study < studies; study++)
        {
            claims += Claims(random) ? 1 : 0;
        }

        return new SimulatedRate(this, studies, claims);
    }
}

/// <summary>How a rate is to be read.</summary>
internal enum Reading
{
    /// <summary>False claims that no rule holds down, or a comparison with a rule that the program does not use.</summary>
    NotControlled,

    /// <summary>False claims, at most five in a hundred by intent.</summary>
    Controlled,

    /// <summary>True claims: the higher the better.</summary>
    Power,
}

/// <summary>How often studies of a scenario claimed.</summary>
internal sealed record SimulatedRate(Scenario Scenario, int Studies, int Claims)
{
    /// <summary>Claims a study.</summary>
    public double Rate => (double)Claims / Studies;

    /// <summary>Binomial standard error of the rate.</summary>
    public double StandardError => Math.Sqrt(Rate * (1 - Rate) / Studies);
}

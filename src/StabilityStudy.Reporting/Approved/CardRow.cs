using StabilityStudy.Core.Register;
using StabilityStudy.Reporting.Pdf;
using static StabilityStudy.Reporting.Approved.ApprovedWords;
using static StabilityStudy.Reporting.Bench.SheetPage;

namespace StabilityStudy.Reporting.Approved;

/// <summary>A row of the bench card, broken into lines.</summary>
internal sealed class CardRow
{
    private readonly BenchRules _rules;
    private readonly BenchRule _rule;
    private readonly CardColumns _columns;
    private readonly ImmutableArray<string> _group;
    private readonly RichText _below;
    private readonly string _window;
    private readonly ImmutableArray<string> _belowWindow;
    private readonly ImmutableArray<RichText> _cells;

    public CardRow(BenchRules rules, BenchRule rule, CardColumns columns, bool isBlack)
    {
        (_rules, _rule, _columns, IsBlack) = (rules, rule, columns, isBlack);
        var comment = Style(CardText.Comment);
        _group = LineBreaking.Break(Group(rule), Style(CardText.Group), columns.Room(0));
        _below = RichText.Break(BelowGroup(), comment, columns.Room(0));
        _window = rule.Limit is { } limit ? Short(limit) : "ask";
        _belowWindow = LineBreaking.Break(BelowWindow(), comment, columns.Room(1));
        _cells =
        [
            RichText.Break(Spin(), Style(CardText.Cell), columns.Room(2), CardText.FigureSize),
            RichText.Break(Never(), Style(CardText.Cell), columns.Room(3)),
            RichText.Break([($"“{Comment()}”", false)], comment, columns.Room(4)),
        ];
    }

    public bool IsBlack { get; }

    public double Height =>
        new[]
        {
            (_group.Length * CardText.Group.Leading) + _below.Height,
            CardText.Window.Leading + (_belowWindow.Length * CardText.Comment.Leading),
            _cells.Max(cell => cell.Height),
        }.Max();

    public void Draw(PageCanvas canvas, double top)
    {
        canvas.TaggedHead(
            "Row",
            1,
            () =>
            {
                canvas.Lines(
                    [.. _group.Select(line => line + " ")],
                    Style(CardText.Group),
                    _columns.From(0),
                    top
                );
                _below.Draw(
                    canvas,
                    _columns.From(0),
                    top + (_group.Length * CardText.Group.Leading)
                );
            }
        );
        canvas.TaggedCell(
            1,
            () =>
            {
                canvas.Text(_window + " ", Style(CardText.Window), _columns.From(1), top - Mm(1.2));
                canvas.Lines(
                    _belowWindow,
                    Style(CardText.Comment),
                    _columns.From(1),
                    top - Mm(0.6) + CardText.Window.Leading
                );
            }
        );
        foreach (var (i, cell) in _cells.Index())
        {
            canvas.TaggedCell(1, () => cell.Draw(canvas, _columns.From(i + 2), top));
        }
    }

    private TextStyle Style(TextStyle style) => CardText.On(style, IsBlack);

    private bool IsWholeBlood => _rules.Any.State == StorageState.WholeBlood;

    private bool IsUnknown => _rule.Group is null;

    private IEnumerable<(string, bool)> BelowGroup()
    {
        if (IsUnknown)
        {
            yield return ("or not sure: ask, and until you know:", false);
        }
        else if (_rule.IsOfOthers)
        {
            yield return ("not studied and in no rule: as when unknown", false);
        }
        else if (_rule.IsApproved)
        {
            yield return (
                $"approved, study {string.Join(", ", _rule.Within.From.Select(item => item.Report.Code).Distinct())}.",
                false
            );
            foreach (
                var text in _rule.Within.From.SelectMany(item => item.Window.Conditions).Distinct()
            )
            {
                yield return ($"Over {Time(_rule.Today)}: {text.TrimEnd('.')}.", true);
            }
        }
        else
        {
            yield return (
                _rule.IsShortened
                    ? $"shorter than today's rule, by decision on {_rule.Within.From[0].Report.Code}"
                : _rule.Refused is { } standing
                    ? $"today's rule, not from a study; {Refused(standing)}"
                : "today's rule, not from a study",
                false
            );
        }
    }

    private string BelowWindow() =>
        _rule.Limit is null ? "the director before you test"
        : _rule.AsPlasma is not null ? $"as {StorageWords.Of(_rules.Any.State)}"
        : "when the test begins";

    private IEnumerable<(string, bool)> Spin()
    {
        if (_rule.Limit is null)
        {
            return [("as soon as it arrives", false)];
        }

        if (_rule.AsPlasma is { } plasma)
        {
            return
            [
                ("by", false),
                ($"{Short(_rule.Today)};", true),
                ("take the plasma off at once, test it by", false),
                (Short(plasma), true),
            ];
        }

        return !IsWholeBlood
                ? [($"spun before it is kept: {StorageWords.Of(_rules.Any.State)}", false)]
            : SpinBy(_rules, _rule.Limit) is not { } by ? [("at once", false)]
            : _rule.IsApproved && _rules.Any.Handling?.Storage.SpinToTest is { } longest
                ?
                [
                    ("by", false),
                    ($"{Short(by)},", true),
                    ("and at most", false),
                    (Short(longest), true),
                    ("before the test", false),
                ]
            : [("by", false), (Short(by), true)];
    }

    private IEnumerable<(string, bool)> Never()
    {
        var approved = ApprovedWindows(_rules);
        return this switch
        {
            { IsUnknown: true } => [("guess the group", false)],
            { _rule.IsOfOthers: true } when !approved.IsEmpty =>
            [
                ($"use the {string.Join(" or ", approved.Select(time => Time(time)))}", false),
            ],
            { _rule.IsOfOthers: true } => [("guess the group", false)],
            { IsWholeBlood: true } when IsHeparin =>
            [
                ($"let {StorageWords.Of(_rules.Any.State)} wait longer:", false),
                (
                    _rules.Any.Handling?.Unit == "s" ? "the clotting time gets" : "the result gets",
                    false
                ),
                (_rules.Any.Handling?.Unit == "s" ? "too short" : "too low", true),
            ],
            { IsWholeBlood: true, _rule.IsApproved: true } =>
            [
                ($"spin early and let it wait: then only {Time(_rule.Today)}", false),
            ],
            { IsWholeBlood: true } =>
            [
                ("put it on ice or into the refrigerator: cold changes it", false),
            ],
            _ => [("count from the spin: age counts from " + Origin(_rules), false)],
        };
    }

    private bool IsHeparin =>
        _rule.Within.KnowsGroup
        && _rule.Within.From[0].Window.Anticoagulant == Anticoagulant.Heparin;

    private string Comment() =>
        ReportedComment.Of(_rule.Beyond) ?? $"{_rules.Analyte} held: director asked.";
}

using StabilityStudy.Core.Study;

namespace StabilityStudy.Files.Json.Forms;

/// <summary>How the laboratory's own files were read.</summary>
internal static class OwnFileForms
{
    public static readonly ObjectForm<ReadHeader> ReadHeaderForm = new("readHeader")
    {
        { "column", v => v.Column, Form.Text },
        { "header", v => v.Header, Form.Text },
    };

    public static readonly ObjectForm<ReadWord> ReadWordForm = new("readWord")
    {
        { "column", v => v.Column, Form.Text },
        { "written", v => v.Written, Form.Text },
        { "readAs", v => v.ReadAs, Form.Text },
    };

    public static readonly ObjectForm<ReplacedCodes> ReplacedCodesForm = new("replacedCodes")
    {
        { "column", v => v.Column, Form.Text },
        { "count", v => v.Count, Form.Count },
    };

    public static readonly ObjectForm<StatedConstant> StatedConstantForm = new("statedConstant")
    {
        { "column", v => v.Column, Form.Text },
        { "value", v => v.Value, Form.Text },
    };

    public static readonly ObjectForm<ReadSetting> ReadSettingForm = new("readSetting")
    {
        { "key", v => v.Key, Form.Text },
        { "value", v => v.Value, Form.Text },
    };

    public static readonly ObjectForm<SentTime> SentTimeForm = new("sentTime")
    {
        { "column", v => v.Column, Form.Text },
        { "field", v => v.Field, Form.Text },
        { "withoutInstrument", v => v.WithoutInstrument, Form.Count },
    };

    public static readonly ObjectForm<OwnFile> OwnFileForm = new("ownFile")
    {
        { "name", v => v.Name, Form.Text },
        { "dateFormat", v => v.DateFormat, Form.Text.OrNull() },
        { "hasDecimalComma", v => v.HasDecimalComma, Form.Truth },
        { "headers", v => v.Headers, Form.List(ReadHeaderForm) },
        { "words", v => v.Words, Form.List(ReadWordForm) },
        { "codes", v => v.Codes, Form.List(ReplacedCodesForm) },
        { "constants", v => v.Constants, Form.List(StatedConstantForm) },
        { "settings", v => v.Settings, Form.List(ReadSettingForm).OrLeftOut() },
    };
}

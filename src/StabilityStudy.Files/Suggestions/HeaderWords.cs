using System.Collections.Frozen;
using StabilityStudy.Files.Csv;

namespace StabilityStudy.Files.Suggestions;

/// <summary>
/// The words by which laboratories head their columns, in English, German, French and Spanish, without accents. Common practice, not
/// from a list that somebody published; a header that is not here is asked about.
/// </summary>
internal static class HeaderWords
{
    /// <summary>Our column → the facility's words.</summary>
    private static readonly FrozenDictionary<string, string> s_columns = WordLists.Table(
        (
            "specimen",
            "specimen, specimen id, specimen no, specimen number, specimen code, sample, sample id, sample no, sample number, sample code, accession, accession number, accession no, barcode, sid, probe, proben id, proben nr, probennummer, probennr, probencode, probenid, auftragsnummer, echantillon, id echantillon, no echantillon, numero echantillon, numero d echantillon, code echantillon, muestra, id muestra, no muestra, numero muestra, numero de muestra, codigo muestra"
        ),
        (
            "tube",
            "tube, tube id, tube no, tube number, tube code, container, rohrchen, roehrchen, rohrchen nr, rohrchennummer, rohrchencode, no tube, numero de tube, id tube, tubo, id tubo, no tubo, numero de tubo"
        ),
        (
            "subject",
            "subject, subject id, subject code, study code, participant, participant id, donor, proband, probandencode, teilnehmer, spender, sujet, code sujet, donneur, sujeto, participante, donante"
        ),
        (
            "group",
            "group, patient group, study group, cohort, gruppe, patientengruppe, groupe, groupe de patients, grupo, grupo de pacientes, anticoagulation, antikoagulation"
        ),
        (
            "storage",
            "storage, storage condition, stored as, lagerung, lagerungsart, lagerbedingung, stockage, conservation, almacenamiento, conservacion"
        ),
        (
            "result",
            "result, results, value, reported result, final result, result value, ergebnis, wert, messwert, resultat, valeur, resultado, valor"
        ),
        (
            "analyte",
            "analyte, test, test code, test name, assay, assay name, parameter, analyt, untersuchung, methode, testname, testcode, parametre, analyse, examen, test id, prueba, analito, determinacion, parametro, ensayo"
        ),
        (
            "unit",
            "unit, units, result unit, uom, einheit, einheiten, dimension, unite, unites, unidad, unidades"
        ),
        (
            "time_point",
            "time point, timepoint, occasion, planned delay, planned time, delay, interval, zeitpunkt, messzeitpunkt, soll zeit, verzogerung, point de temps, delai, delai prevu, momento, punto de tiempo, retraso"
        ),
        (
            "replicate",
            "replicate, rep, repeat no, replicate no, wiederholung, replikat, bestimmung nr, replicat, repetition, replica, repeticion"
        ),
        (
            "run",
            "run, run id, run no, run number, batch, worklist, lauf, lauf nr, laufnummer, serie, serien nr, no serie, numero de serie, tanda, corrida"
        ),
        (
            "instrument",
            "instrument, instrument id, instrument name, analyzer, analyser, gerat, gerate id, analysator, messgerat, automate, appareil, analizador, equipo, instrumento"
        ),
        (
            "lot",
            "lot, lot no, lot number, reagent lot, charge, chargennummer, chargen nr, reagenzcharge, lot reactif, numero de lot, lote, lote reactivo, numero de lote"
        ),
        (
            "calibration",
            "calibration, calibration id, kalibration, kalibrierung, calibrage, etalonnage, calibracion"
        ),
        (
            "operator",
            "operator, operator id, user, user id, tech, tech id, technologist, tested by, bediener, anwender, benutzer, mta, operateur, technicien, operador, usuario, tecnico"
        ),
        (
            "flag",
            "flag, flags, abnormal flag, instrument flag, error, error code, error flag, warning, fehler, fehlercode, hinweis, markierung, kennzeichen, drapeau, alarme, alerte, code erreur, code d erreur, indicador, bandera, alarma, codigo de error"
        ),
        (
            "remark",
            "remark, remarks, comment, comments, note, notes, bemerkung, bemerkungen, kommentar, anmerkung, commentaire, commentaires, remarque, comentario, comentarios, observacion, observaciones"
        ),
        (
            "control",
            "control, control id, control name, control level, qc, qc id, qc name, qc level, qc material, kontrolle, kontrollname, kontrollmaterial, qk, qk name, kontrollprobe, controle, nom du controle, niveau de controle, nivel de control, nombre del control"
        ),
        (
            "target",
            "target, target value, assigned value, expected, expected value, sollwert, zielwert, cible, valeur cible, valor diana, valor objetivo, valor esperado"
        ),
        (
            "allowed_low",
            "allowed low, low, lower, lower limit, low limit, min, minimum, untergrenze, untere grenze, limite inferieure, borne inferieure, limite basse, limite inferior, minimo"
        ),
        (
            "allowed_high",
            "allowed high, high, upper, upper limit, high limit, max, maximum, obergrenze, obere grenze, limite superieure, borne superieure, limite haute, limite superior, maximo"
        ),
        ("kind", "kind, control kind, kontrollart"),
        (
            "fill_percent",
            "fill percent, fill, fill %, filling, fullung, fullung %, fullmenge, fullstand, remplissage, remplissage %, llenado, llenado %"
        ),
        (
            "hematocrit_percent",
            "hematocrit percent, hematocrit, haematocrit, hct, hct %, pcv, hamatokrit, hkt, hk, hematocrite, hematocrito, hto"
        ),
        ("hemolysis", "hemolysis, haemolysis, hamolyse, hemolyse, hemolisis"),
        (
            "clot",
            "clot, clotted, clot seen, clot check, gerinnsel, koagel, coagulum, caillot, coagulo"
        ),
        (
            "inversions",
            "inversions, number of inversions, schwenkungen, retournements, inversiones"
        ),
        (
            "draw_position",
            "draw position, draw order, tube order, abnahmereihenfolge, ordre de prelevement, orden de extraccion"
        ),
        (
            "device",
            "device, collection device, needle, abnahmesystem, kanule, nadel, dispositif, aiguille, dispositivo, aguja"
        ),
        ("origin", "origin, herkunft, origine, origen"),
        ("discard_tube", "discard tube, verwerfrohrchen, tube de purge, tubo de descarte"),
        ("transport", "transport, transporte")
    );

    /// <summary>What happened to a tube at a time → words for it.</summary>
    private static readonly FrozenDictionary<string, string> s_events = WordLists.Table(
        (
            "collected_at",
            "collected, collection, specimen collected, drawn, draw, entnahme, abnahme, blutentnahme, blutabnahme, entnommen, prelevement, preleve, extraccion, toma, recogida"
        ),
        (
            "received_at",
            "received, receipt, received in lab, eingang, probeneingang, eingegangen, angekommen, reception, recu, recepcion, recibido, recibida"
        ),
        (
            "spun_at",
            "spun, spin, centrifuged, centrifugation, zentrifugation, zentrifugiert, centrifugee, centrifuge, centrifugado, centrifugacion"
        ),
        (
            "separated_at",
            "separated, separation, abgetrennt, plasma abgenommen, separe, separado, separacion"
        ),
        (
            "frozen_at",
            "frozen, freezing, eingefroren, congelation, congele, congelado, congelacion"
        ),
        (
            "thawed_at",
            "thawed, thawing, aufgetaut, decongelation, decongele, descongelado, descongelacion"
        ),
        (
            "tested_at",
            "tested, test, testing, measured, measurement, analyzed, analysed, analysis, result, run, assayed, completed, messung, gemessen, mess, analyse, getestet, ergebnis, mesure, resultat, analisis, medicion, medido, resultado, ensayo"
        ),
        (
            "printed",
            "printed, print, exported, export, verified, verification, validated, validation, authorized, released, reported, druck, gedruckt, freigabe, validierung, freigegeben, impression, imprime, valide, edition, impreso, impresion, validado, validacion"
        )
    );

    private static readonly FrozenSet<string> s_dates = WordLists.Set(
        "date, datum, fecha, day, tag, jour, dia"
    );
    private static readonly FrozenSet<string> s_times = WordLists.Set(
        "time, zeit, uhrzeit, heure, hora, clock, at"
    );
    private static readonly FrozenSet<string> s_small = WordLists.Set(
        "at, on, of, and, the, um, am, der, des, de, du, la, le, d, l, el, del, y, et, und, local, stamp, zeitstempel, datetime, timestamp, horodatage, specimen, sample, probe, probes, proben, echantillon, muestra, tube, blood, blut, sang, sangre, started, completed"
    );

    // "N° de tube" is a tube.
    private static readonly FrozenSet<string> s_numbers = WordLists.Set(
        "n, no, nr, num, numero, nummer, number, id, code, de, d, du, del, of, the, la, le, l, el"
    );
    private static readonly FrozenSet<string> s_temperatures = WordLists.Set(
        "temperature, temp, temperatur, temperatura, celsius"
    );

    /// <summary>Our column for a header; null for one that is not known.</summary>
    public static string? ColumnOf(string header)
    {
        var words = PlainWords.Of(header);
        return s_columns.GetValueOrDefault(string.Join(' ', words))
            ?? s_columns.GetValueOrDefault(
                string.Join(' ', words.Where(word => !s_numbers.Contains(word)))
            );
    }

    /// <summary>Whether a header is made of words of the trade, and so is nobody's name.</summary>
    public static bool Knows(string header) =>
        ColumnOf(header) is not null
        || PersonalHeaders.Of(header) is not null
        || EventOf(header) is not null;

    /// <summary>Whether a header is that of a temperature.</summary>
    public static bool IsTemperature(string header) =>
        PlainWords.Of(header).Any(s_temperatures.Contains);

    /// <summary>Our column of times for a header, with what it was: "" for a mere date or time; null for a header of something else.</summary>
    public static string? EventOf(string header) => EventOf(PlainWords.Of(header));

    /// <summary>The same of words.</summary>
    public static string? EventOf(ImmutableArray<string> words)
    {
        var hasTime = false;
        var rest = new List<string>();
        foreach (var word in words)
        {
            if (
                s_dates.Contains(word)
                || s_times.Contains(word)
                || word is "datetime" or "timestamp" or "zeitstempel" or "horodatage"
            )
            {
                hasTime = true;
            }
            else if (Compound(word) is { } first)
            {
                hasTime = true;
                rest.Add(first);
            }
            else if (!s_small.Contains(word))
            {
                rest.Add(word);
            }
        }

        if (rest.Count == 0)
        {
            return hasTime ? "" : null;
        }

        var found =
            s_events.GetValueOrDefault(string.Join(' ', rest))
            ?? (rest.Count > 1 ? s_events.GetValueOrDefault(rest[^1]) : null);

        // "Result" alone is a result; "drawn" alone is a time.
        return
            found is null
            || (
                !hasTime
                && found is "tested_at"
                && rest[0]
                    is not (
                        "tested"
                        or "measured"
                        or "analyzed"
                        or "analysed"
                        or "assayed"
                        or "gemessen"
                        or "getestet"
                    )
            )
            ? null
            : found;
    }

    /// <summary>Whether a header names a day without a time of day.</summary>
    public static bool IsDate(string header) =>
        PlainWords.Of(header) is var words
        && (
            words.Any(s_dates.Contains)
            || words.Any(word => word.EndsWith("datum", StringComparison.Ordinal))
        );

    // German joins the two: Entnahmezeit, Messdatum.
    private static string? Compound(string word)
    {
        foreach (var end in new[] { "uhrzeit", "zeitpunkt", "zeit", "datum" })
        {
            if (
                word.Length > end.Length
                && word.EndsWith(end, StringComparison.Ordinal)
                && s_events.ContainsKey(word[..^end.Length])
            )
            {
                return word[..^end.Length];
            }
        }

        return null;
    }
}

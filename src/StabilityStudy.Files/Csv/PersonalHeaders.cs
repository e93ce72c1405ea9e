using System.Collections.Frozen;

namespace StabilityStudy.Files.Csv;

/// <summary>
/// Headers by which a file tells who people are, in English, German, French and Spanish, without accents (common practice, from no
/// published list). Such a column is read by nothing, and a file that has one is described first, so that this is not left to chance.
/// </summary>
internal static class PersonalHeaders
{
    private const string NoNeed = "tells about persons, and no result needs it";

    private static readonly FrozenDictionary<string, string> s_personal = WordLists.Table(
        (
            "looks like people's names",
            "name, names, patient, patient name, last name, first name, surname, given name, family name, full name, nachname, vorname, patientenname, familienname, nom, prenom, nom du patient, nom prenom, nombre, apellido, apellidos, nombre y apellidos, nombre del paciente, paciente, physician, doctor, ordering physician, arzt, einsender, medecin, prescripteur, medico"
        ),
        (
            "looks like birth dates",
            "dob, date of birth, birth date, birthdate, birthday, year of birth, geburtsdatum, geb datum, geburtstag, geb, date de naissance, naissance, ddn, fecha de nacimiento, nacimiento"
        ),
        (
            "looks like record numbers",
            "mrn, medical record number, medical record no, record number, patient id, patient no, patient number, pid, case, case number, visit, visit number, fallnummer, fall nr, fallnr, patientennummer, patienten id, pat id, pat nr, ipp, nip, nir, dossier, numero de dossier, numero patient, historia clinica, numero de historia, nhc, ssn, social security number, insurance number, versichertennummer"
        ),
        (
            "looks like addresses or telephone numbers",
            "phone, phone number, telephone, mobile, address, street, city, zip, email, telefon, telefonnummer, adresse, strasse, ort, plz, telephone no, rue, ville, telefono, direccion, calle, correo"
        ),
        (
            NoNeed,
            "sex, gender, age, geschlecht, alter, sexe, sexo, edad, ward, station, abteilung, service, sala"
        )
    );

    /// <summary>What a header says of persons; null where it says nothing.</summary>
    public static string? Of(string header) =>
        s_personal.GetValueOrDefault(PlainWords.Joined(header));

    /// <summary>Whether a header tells who people are.</summary>
    public static bool Tells(string header) => Of(header) is not (null or NoNeed);

    /// <summary>Raises a query for each column that tells who people are and that study.toml does not leave aside by naming those that are read.</summary>
    public static void Report(
        IEnumerable<string> names,
        int line,
        string fileName,
        string section,
        QueryList queries
    )
    {
        foreach (var name in names)
        {
            if (Tells(name))
            {
                queries.Add(
                    CsvQueries.PersonalColumn,
                    new QuerySource(fileName, line, name),
                    name,
                    $"The column \"{name}\" {Of(name)}; nothing of it is read or shown.",
                    $"Export the file without it, or name the columns that are read under [read.{section}.columns] in study.toml, which leaves the others aside; check --suggest writes that."
                );
            }
        }
    }
}

Console.WriteLine("pending");

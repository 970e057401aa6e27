package passband.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.util.List;
import java.util.Objects;
import passband.library.UnforeseenException;
import passband.library.UsageException;

/** Says in one line why a command could not do its work, foreseen or not. */
final class LastHandler {
  private LastHandler() {}

  /** Says it, after what the command has printed; where nothing can be said, nothing is. */
  static void say(String command, Throwable failure, Invocation invocation) {
    for (Runnable part :
        List.<Runnable>of(
            invocation.out()::flush,
            () -> invocation.err().println(line(command, failure)),
            invocation.err()::flush)) {
      try {
        part.run();
      } catch (RuntimeException e) {
        // the stream itself is at fault: the exit status tells
      }
    }
  }

  /**
   * The line.
   *
   * @param command its name
   */
  static String line(String command, Throwable failure) {
    if (failure instanceof UsageException || failure instanceof OutputFailure) {
      return "passband: " + failure.getMessage();
    } else if (failure instanceof UncheckedIOException unchecked) {
      return line(command, Objects.requireNonNullElse(unchecked.getCause(), new IOException()));
    } else if (failure instanceof IOException io) {
      return "passband: " + reason(io);
    } else if (failure instanceof InvalidPathException path) {
      return "passband: '" + path.getInput().replace('\0', '?') + "' is not a valid path";
    } else if (failure instanceof UnforeseenException unforeseen) {
      Throwable cause = Objects.requireNonNullElse(unforeseen.getCause(), unforeseen);
      return cause instanceof UncheckedIOException
          ? line(command, cause)
          : unforeseen(command, " while working on " + unforeseen.place(), cause);
    }
    return unforeseen(command, "", failure);
  }

  private static String reason(IOException e) {
    if (e instanceof AccessDeniedException) {
      return "no permission to read or write " + e.getMessage();
    } else if (e instanceof NoSuchFileException) {
      return "there is no " + e.getMessage();
    } else if (e instanceof NotDirectoryException) {
      return "not a folder: " + e.getMessage();
    } else if (e instanceof FileSystemException f && f.getReason() != null) {
      return f.getFile() + ": " + f.getReason();
    }
    return e.getMessage() == null ? e.getClass().getSimpleName() : e.getMessage();
  }

  private static String unforeseen(String command, String place, Throwable failure) {
    if (failure instanceof OutOfMemoryError) {
      return "passband: '"
          + command
          + "' ran out of memory"
          + place
          + "; set JAVA_TOOL_OPTIONS=-Xmx4g to allow more";
    }
    return "passband: '"
        + command
        + "' failed"
        + place
        + ": "
        + described(failure)
        + ". This is a fault of Passband; please report it.";
  }

  /** The failure's kind, message and where in this program it was. */
  private static String described(Throwable failure) {
    StringBuilder described = new StringBuilder(failure.getClass().getSimpleName());
    if (failure.getMessage() != null) {
      described.append(" (").append(failure.getMessage().replaceAll("\\s+", " ")).append(')');
    }
    for (StackTraceElement element : failure.getStackTrace()) {
      if (element.getClassName().startsWith("passband.")) {
        described.append(" in ").append(element.getFileName());
        return described.append(':').append(element.getLineNumber()).toString();
      }
    }
    return described.toString();
  }
}
